# Targets for people: run, test, size, bench, clean. `make test` is what CI runs.

www := www
npm_stamp := $(www)/node_modules/.package-lock.json

.PHONY: run build clean

run: build
	node $(www)/serve.mjs

build: $(npm_stamp)
	node $(www)/build.mjs

$(npm_stamp): $(www)/package.json $(www)/package-lock.json
	cd $(www) && npm ci --ignore-scripts
	touch $@

clean:
	rm -rf $(www)/build $(www)/.out $(www)/src/gen
