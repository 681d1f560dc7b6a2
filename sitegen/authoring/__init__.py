"""What helps the author between capture folder and published page: new files in content/, the coming nights, a preview."""
