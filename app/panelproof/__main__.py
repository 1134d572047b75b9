"""`python -m panelproof`."""

import sys

from panelproof.command import main

sys.exit(main())
