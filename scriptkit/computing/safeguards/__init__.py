"""What may mislead about who pays, or may hurt a viewer."""
