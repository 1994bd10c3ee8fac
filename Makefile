# Two commands: `make demo` and `make test`. Both start from a fresh Debian with Python and make.
SHELL := /bin/bash
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
READY := $(VENV)/ready
TESTED := $(VENV)/ready-for-tests
AS_ROOT := $(shell [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1 && echo yes)
PIP := $(BIN)/python -m pip --disable-pip-version-check --quiet

.PHONY: demo test check bench mutants clean

demo: $(READY)
	@mkdir -p out
	@$(BIN)/borewright plan examples/hollow-brook-drive-wheel.toml --shelf examples/hollow-brook-shelf.toml \
	  --sheet out/hollow-brook-drive-wheel.pdf --drawing out/hollow-brook-drive-wheel.svg
	@echo "Bench sheet: out/hollow-brook-drive-wheel.pdf   Drawing: out/hollow-brook-drive-wheel.svg"

test: $(TESTED)
	$(MAKE) --no-print-directory check
	$(BIN)/python -m pytest -n 2 --dist worksteal -p no:cacheprovider

check: $(TESTED)
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/lint-imports --no-cache

bench: $(TESTED)
	$(BIN)/python bench/startup.py
	$(BIN)/python -m bench.parts
	$(BIN)/python -m bench.ways
	$(BIN)/python -m bench.passes
	$(BIN)/python -m bench.contact

mutants: $(TESTED)
	$(BIN)/python -m tests.mutants

clean:
	rm -rf $(VENV) out build dist

# The environment. When root on Debian, Python's venv module is installed if it is missing.
$(READY): pyproject.toml constraints.txt system-packages.txt
ifeq ($(AS_ROOT),yes)
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || \
	  { apt-get update -qq && apt-get install -y -qq python3-venv; }
endif
	@$(PYTHON) -m venv $(VENV)
	@$(PIP) install --constraint constraints.txt --editable .
	@$(BIN)/python -m compileall -q src
	@touch $@

$(TESTED): $(READY)
ifeq ($(AS_ROOT),yes)
	@missing="$$(for p in $$(grep -v '^#' system-packages.txt); do dpkg -s $$p >/dev/null 2>&1 || echo $$p; done)"; \
	  if [ -n "$$missing" ]; then apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq $$missing; fi
endif
	@$(PIP) install --constraint constraints.txt --editable '.[test]'
	@touch $@
