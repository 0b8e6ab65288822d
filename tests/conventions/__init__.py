"""The conventions, each as a test, so that they do not rot; an exemption carries its reason."""
