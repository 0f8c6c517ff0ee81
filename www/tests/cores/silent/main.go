//go:build js && wasm

// Command silent is a core that never answers the third call of a life.
package main

import "gaugewright/www/tests/cores/tally"

func main() {
	core := tally.New()
	tally.Serve(core, func() {
		for core.Calls == 2 {
		}
	})
}
