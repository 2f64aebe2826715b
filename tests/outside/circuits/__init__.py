"""Faulted low-voltage circuits, solved by nodal analysis, and what an instrument reads in them. None of it comes from the app."""
