//go:build !(js && wasm)

package main

// Elsewhere there is no page to serve; the native shell is wasm/stdio.
func main() {
	println("this program runs in a browser; build it with GOOS=js GOARCH=wasm")
}
