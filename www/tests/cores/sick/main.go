//go:build js && wasm

// Command sick is a core that traps on the third call of every life.
package main

import "gaugewright/www/tests/cores/tally"

func main() {
	core := tally.New()
	tally.Serve(core, func() {
		if core.Calls == 2 {
			panic("a trap on the third call")
		}
	})
}
