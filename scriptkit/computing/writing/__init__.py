"""The script: texts and their tags become sentences that know where they come from."""
