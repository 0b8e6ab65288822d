#!/usr/bin/env python
"""The one command: demo, serve, migrate and everything else."""

import gc
import os
import sys

if __name__ == "__main__":
    gc.set_threshold(50_000, 20, 20)  # start-up makes rows that stay: sweeping them took a seventh of it
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "records.settings")
    from django.core.management import execute_from_command_line

    execute_from_command_line(sys.argv)
