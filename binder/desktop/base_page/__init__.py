"""The base: the flow from bag to dishes, a table of its forms, how they are made, their trials and their cost."""
