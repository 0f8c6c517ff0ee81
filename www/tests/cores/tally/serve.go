//go:build js && wasm

package tally

import "syscall/js"

// Serve offers a core to the page's worker and never returns. Before each call
// it asks before, which may misbehave; nothing here recovers from a panic.
func Serve(core *Core, before func()) {
	js.Global().Set("gaugewright", map[string]any{"call": js.FuncOf(func(_ js.Value, args []js.Value) any {
		before()
		var data []byte
		if len(args) > 1 && args[1].Type() == js.TypeObject {
			data = make([]byte, args[1].Get("byteLength").Int())
			js.CopyBytesToGo(data, args[1])
		}
		text, out := core.Call(args[0].String(), data)
		answer := map[string]any{"answer": text}
		if out != nil {
			array := js.Global().Get("Uint8Array").New(len(out))
			js.CopyBytesToJS(array, out)
			answer["bytes"] = array
		}
		return answer
	})})
	select {}
}
