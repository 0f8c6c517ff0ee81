//go:build js && wasm

// Command plain is a well-behaved core for the tests of the page's platform.
package main

import "gaugewright/www/tests/cores/tally"

func main() { tally.Serve(tally.New(), func() {}) }
