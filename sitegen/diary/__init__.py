"""What a valid diary is: frozen records, no files, no astronomy."""
