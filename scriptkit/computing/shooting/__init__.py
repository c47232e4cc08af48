"""The day of the shoot: shots in an order with little to change, on the clock, within the hours there are."""
