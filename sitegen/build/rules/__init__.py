"""One file a rule: its tasks, what each hangs on, and the record of what it tells later rules."""
