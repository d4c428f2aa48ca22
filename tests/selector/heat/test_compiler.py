"""The compiler comes without the libraries that the inner loop never calls."""

import subprocess
import sys

LOADED = """
import sys
import selector.heat.kernel
print([name for name in ("scipy.linalg", "numpy.f2py") if name in sys.modules])
import scipy.linalg.cython_blas
"""


def test_scipy_is_not_loaded_with_it_and_can_be_later():
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", LOADED], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
