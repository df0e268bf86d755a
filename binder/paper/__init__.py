"""What is printed: the ReportLab documents of the print set."""
