"""Money: the budget, what dishes cost beside their caps, what may be said on camera, and the books after."""
