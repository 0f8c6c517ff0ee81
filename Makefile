# Targets for people. `make test` is what CI runs; it sets up what it needs.
#
#   make run      build the page and serve it on this machine
#   make build    build the page into www/build/
#   make test     everything that must hold
#   make report   every check against a published value: expected, got, difference, tolerance
#   make trials   50 kills of the browser while it types, joins and updates
#   make fuzz     random files, patches and copies, FUZZTIME (5m) for each kind
#   make size     what the page weighs, beside its budgets (CHECK=1: fail over budget)
#   make bench    what it costs in time and memory, beside its budgets; never fails
#   make clean    drop what was built

www := www
npm_stamp := $(www)/node_modules/.package-lock.json
goroot = $(shell go env GOROOT)

.PHONY: run build test report trials fuzz size bench clean go-check go-test wasm-test type-check browser-test chromium

run: build
	node $(www)/serve.mjs

build: $(npm_stamp)
	node $(www)/build.mjs

test: go-check go-test wasm-test type-check size-check browser-test

go-check:
	@unformatted=$$(gofmt -l calc wasm www/tests); \
	if [ -n "$$unformatted" ]; then echo "not formatted by gofmt:"; echo "$$unformatted"; exit 1; fi
	go vet ./...
	GOOS=js GOARCH=wasm go vet ./...

go-test:
	go test ./...

# The tests write down what they compared; what fails is printed before the table.
report:
	@lines=$$(mktemp) && output=$$(mktemp) && status=0; \
	PUBLISHED_FILE=$$lines go test -count=1 ./calc/... >$$output 2>&1 || { status=1; grep -v '^ok\|no test files' $$output; }; \
	go run ./calc/published/report $$lines || status=1; \
	rm -f $$lines $$output; exit $$status

# The same tests as compiled for the browser, their code shortened as the page's is, run under Node.
wasm-test:
	GOOS=js GOARCH=wasm go test -exec "node $(CURDIR)/$(www)/tools/shortened.mjs $(goroot)/lib/wasm/go_js_wasm_exec" ./calc/...

# The screens import the core's words, which the build writes out.
type-check: build
	cd $(www) && for part in tsconfig.json tsconfig.worker.json tsconfig.tests.json; do \
		node_modules/.bin/tsc -p $$part || exit 1; done

.PHONY: size-check
size-check: build
	CHECK=1 node $(www)/size.mjs

browser-test: build chromium
	node $(www)/tests/run.mjs

trials: build chromium
	TRIALS=50 node $(www)/tests/run.mjs durability

# One after the other and on one processor, so that the machine is good for
# something else meanwhile. What is found stays as a seed in the package.
FUZZTIME ?= 5m
fuzz:
	@for target in document/FuzzRead document/FuzzPatch history/FuzzUnion quantity/FuzzReadTyped table/FuzzRead table/FuzzWrite desk/FuzzImport; do \
		go test -run '^$$' -fuzz "^$${target#*/}$$" -fuzztime $(FUZZTIME) -parallel 1 ./calc/$${target%/*} || exit 1; done

size: build
	node $(www)/size.mjs

bench: build chromium
	go test -run '^$$' -bench . -benchtime 200ms ./...
	node $(www)/bench.mjs
	node $(www)/bench-large.mjs
	node $(www)/bench/native.mjs
	node $(www)/size.mjs
	@echo "make test, two cores, warm caches: not measured here, run: time make test     budget 6 minutes"

chromium:
	@command -v chromium >/dev/null || command -v chromium-browser >/dev/null || { \
		if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
			apt-get update && apt-get install -y --no-install-recommends chromium; \
		else \
			echo "The browser tests need Debian's chromium, and only root may install it here:"; \
			echo "  sudo apt-get install chromium"; \
			exit 1; \
		fi; }

# npm ci writes this file last. Nothing here needs an install script.
$(npm_stamp): $(www)/package.json $(www)/package-lock.json
	cd $(www) && npm ci --ignore-scripts
	touch $@

clean:
	rm -rf $(www)/build $(www)/.out $(www)/src/gen
