//go:build js && wasm

// Command mute is a core that never gets ready.
package main

func main() {
	for {
	}
}
