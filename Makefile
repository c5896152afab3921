# What can be done here?  `make` alone says it.

SHELL      := /bin/bash
jobs       := $(shell nproc 2>/dev/null || echo 2)
python     := $(firstword $(wildcard /usr/bin/python3) python3)
command    := build/release/towershaft
HOURS      ?= 2.5
TIMES      ?= 20
# Each target gets its share.
FUZZ_SECONDS ?= $(shell awk 'BEGIN { print int($(HOURS) * 3600 / $(words $(wildcard tests/fuzz/fuzz_*.c))) }')

.DEFAULT_GOAL := help
.PHONY: help setup build demo test open pictures bench bank bank-arrange fuzz fuzz-afl soak deb golden analyse coverage mutants tsan fix clean

help: ## list these targets
	@echo 'towershaft: make <target>, where target is one of'
	@sed -n 's/^\([a-z-]*\):.*## \(.*\)/  \1\t\2/p' Makefile | expand -t 12

setup: ## install the Debian packages that are missing (apt; root or sudo)
	@tools/setup-debian.sh

build: ## build the command, build/release/towershaft, and the library
	@tools/setup-debian.sh build
	@tools/configure.sh release
	@cmake --build build/release --target $(notdir $(command)) towershaft_shared

demo: build ## run the main job on an invented engine; pictures and answers go to out/demo/
	@tools/demo.sh

test: ## run every test: release, sanitizers, fuzz smokes; sets the machine up first
	@tools/run_tests.sh

open: build ## work on an invented engine in a local page, on a copy: out/bizjet.yaml
	@mkdir -p out
	@[ -e out/bizjet.yaml ] || cp examples/bizjet.yaml out/bizjet.yaml
	@$(command) open out/bizjet.yaml

pictures: demo ## run the demo and show its pictures in the viewer of this desktop
	@tools/show_pictures.sh out/demo

bench: ## measure speed as ratios and counts, beside Python, NumPy, SciPy and Cbc too, and count instructions
	@tools/setup-debian.sh bench
	@tools/configure.sh release
	@cmake --build build/release
	@build/release/towershaft-bench
	@$(python) -B bench/peer/compare.py
	@$(python) -B bench/peer/compare_seizure.py
	@$(python) -B bench/peer/compare_modes.py
	@$(python) -B bench/peer/arrange_mip.py
	@$(python) -B bench/growth.py
	@tools/count_instructions.sh

bank: setup ## run published cases: BANK=file.json, or all of tests/reference/
	@tools/configure.sh release
	@cmake --build build/release --target towershaft-bank
	@build/release/towershaft-bank $(if $(BANK),'$(BANK)',$(sort $(filter-out tests/reference/arrange_%,$(wildcard tests/reference/*.json))))

bank-arrange: setup ## run proven arrangement problems: BANK=file.json, or those of tests/reference/
	@tools/configure.sh release
	@cmake --build build/release --target towershaft-bank-arrange
	@build/release/towershaft-bank-arrange $(if $(BANK),'$(BANK)',tests/reference/arrange_small.json)

fuzz: setup ## throw malformed input at the readers for HOURS=2.5; findings go to out/fuzz/ (docs/fuzz.md)
	@tools/configure.sh sanitize
	@cmake --build build/sanitize
	@tools/fuzz_long.sh $(FUZZ_SECONDS)

fuzz-afl: setup ## the same by AFL++, whose findings go to out/fuzz/afl-*/
	@tools/setup-debian.sh fuzz
	@tools/configure.sh afl
	@cmake --build build/afl --target fuzz_targets
	@ENGINE=afl tools/fuzz_long.sh $(FUZZ_SECONDS)

soak: setup ## what takes too long for `make test`, PARTS=all of tools/soak.sh: TIMES=20 times the cases, kills, analysers, fuzz
	@tools/configure.sh release
	@cmake --build build/release
	@tools/configure.sh sanitize
	@cmake --build build/sanitize
	@TIMES='$(TIMES)' tools/soak.sh $(FUZZ_SECONDS) $(PARTS)

deb: ## build the Debian packages of what is committed into out/deb/, and let lintian judge them
	@tools/setup-debian.sh deb
	@tools/make_deb.sh

analyse: setup ## let gcc -fanalyzer, clang-tidy and cppcheck read src/; every suppression has its reason
	@tools/configure.sh release
	@cmake --build build/release --target ts_generated
	@$(python) tools/analyse.py --jobs $(jobs)

tsan: setup ## run every test that uses threads under the thread sanitizer
	@tools/configure.sh tsan
	@cmake --build build/tsan
	@ctest --preset tsan -j$(jobs) -L threads

coverage: setup ## count the lines and branches that the tests go through (docs/proof.md)
	@tools/configure.sh coverage
	@cmake --build build/coverage
	@find build/coverage -name '*.gcda' -delete
	-@TS_TAKINGS=300 ctest --preset coverage -j$(jobs) -LE 'structure|bench|web'
	@$(python) tools/coverage.py

mutants: setup ## change formulas of src/element, COUNT=300 of them, and tell how many the tests see
	@tools/configure.sh release
	@cmake --build build/release
	@$(python) tools/mutants.py --count $(or $(COUNT),300) --jobs $(jobs)

golden: build ## show how the committed answers differ from today's; ACCEPT=1 takes the new ones
	@$(python) tools/staircase.py --write
	@$(python) tools/golden.py $(if $(ACCEPT),--accept)

fix: ## format every C source with clang-format
	@tools/fix.sh

clean: ## remove build/ and out/
	@rm -rf build out
