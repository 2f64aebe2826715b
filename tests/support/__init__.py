"""What the checks share: the binary as a process, a phone to hold, folders that fail in known ways."""
