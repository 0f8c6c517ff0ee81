//go:build js && wasm

// Command page is the browser shell of the core. It runs inside a Web Worker
// and holds one desk. It sets globalThis.gaugewright = {call, labels} and then
// waits for ever: as long as the program has not returned, the desk is alive.
//
//	call(request: string, bytes?: Uint8Array): {answer: string, bytes?: Uint8Array}
//	labels: string, the words of screens that need a running core, as JSON
//
// Request and answer are JSON text, the bytes are a job file. The shell knows
// no verb: it copies bytes in and out and guards the border against panics.
package main

import (
	"runtime"
	"runtime/debug"
	"syscall/js"

	"gaugewright/calc/desk"
)

// largeFile is the number of bytes from which on a file is taken in without
// collecting garbage: nearly all that reading makes stays, and collections would
// only walk it again and again. The host's limit of memory holds all the same.
const largeFile = 1 << 20

func main() {
	d := desk.New()
	call := js.FuncOf(func(_ js.Value, args []js.Value) any {
		return answer(d, args)
	})
	js.Global().Set("gaugewright", map[string]any{"call": call, "labels": string(desk.Labels(true))})
	select {}
}

// answer runs one call of the desk. A panic becomes an answer with
// "fault":true; the host then throws this instance away, because after a panic
// half-made changes may be left in the desk.
func answer(d *desk.Desk, args []js.Value) (result map[string]any) {
	defer func() {
		if cause := recover(); cause != nil {
			result = map[string]any{"answer": faultAnswer(cause)}
		}
	}()
	if len(args) == 0 || args[0].Type() != js.TypeString {
		panic("call needs the request as its first argument, a JSON text")
	}
	var data []byte
	if len(args) > 1 && args[1].Type() == js.TypeObject {
		size := args[1].Get("byteLength").Int()
		if size > largeFile {
			runtime.GC() // what was closed makes room first
			defer debug.SetGCPercent(debug.SetGCPercent(-1))
		}
		data = make([]byte, size)
		js.CopyBytesToGo(data, args[1])
	}
	text, out := d.Call(args[0].String(), data)
	result = map[string]any{"answer": text}
	if out != nil {
		array := js.Global().Get("Uint8Array").New(len(out))
		js.CopyBytesToJS(array, out)
		result["bytes"] = array
	}
	return result
}
