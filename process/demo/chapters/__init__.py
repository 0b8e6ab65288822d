"""The chapters of the scenario: each reads its own tables and goes through the services that the pages use."""
