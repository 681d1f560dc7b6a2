"""What tasks do. These modules load the heavy rooms, so they are named by their rules and imported when a task is stale."""
