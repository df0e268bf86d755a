"""The page of the day: who and what is there, the plan as a timeline, and the days before."""
