# The two commands of the README, and what they are made of.
PYTHON ?= python3
UV_VERSION := 0.13.9
BIN := .venv/bin

.PHONY: run judge test check env lock clean bench

run: judge

judge: env  ## judge every example visit; papers go to out/
	$(BIN)/mastwright judge examples/visits/*.toml --out out

test: check  ## everything: linters, contracts, types, tests with coverage
	$(BIN)/python -m pytest -p no:cacheprovider --cov --cov-report=
	$(BIN)/python -m coverage report --fail-under=100 --skip-covered --include='src/mastwright/quantity/*,src/mastwright/chains/*,src/mastwright/mast/*,src/mastwright/checks/*,src/mastwright/visits/*,src/mastwright/verdict/*'

check: env  ## linters, import contract, types
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/lint-imports
	$(BIN)/mypy src tests bench

bench: env  ## the figures of bench/RESULTS.md
	$(BIN)/python bench/run.py

env: .venv/ready

.venv/ready: requirements.lock pyproject.toml
	$(PYTHON) -m venv .venv
	$(BIN)/python -m pip install -q --disable-pip-version-check uv==$(UV_VERSION)
	VIRTUAL_ENV=.venv $(BIN)/uv pip install -q --require-hashes -r requirements.lock
	VIRTUAL_ENV=.venv $(BIN)/uv pip install -q --no-deps --no-build-isolation -e .
	touch $@

lock:  ## make requirements.lock anew from pyproject.toml
	$(BIN)/uv pip compile -q --universal --python-version 3.11 --generate-hashes --no-emit-index-url --no-header --no-annotate --group dev pyproject.toml -o requirements.lock

clean:
	rm -rf .venv out
