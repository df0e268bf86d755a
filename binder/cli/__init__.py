"""What is typed: the commands, one file each."""
