//go:build js && wasm

// Command trap is a core whose first life ends at its third call.
package main

import (
	"syscall/js"

	"gaugewright/www/tests/cores/tally"
)

func main() {
	core := tally.New()
	tally.Serve(core, func() {
		if core.Calls == 2 && js.Global().Get("trapped").IsUndefined() {
			js.Global().Set("trapped", true)
			panic("a trap on the third call")
		}
	})
}
