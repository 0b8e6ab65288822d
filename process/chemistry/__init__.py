"""The arithmetic of the bath: quantities in, quantities out, nothing of Django."""
