"""Small drawings that say a state or a figure by shape: marks, bars, pans."""
