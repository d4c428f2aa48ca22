"""The command line as a module: installed as `temperwright`, so that `python -m` finds it."""

from selector.commands import main

if __name__ == "__main__":
    main()
