"""What is typed: one file a command, thin. Only `open_command` leads to the window, and only when it is asked for."""
