#!/usr/bin/env python
"""The one command: demo, serve, migrate and everything else."""

import os
import sys

if __name__ == "__main__":
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "records.settings")
    from django.core.management import execute_from_command_line

    execute_from_command_line(sys.argv)
