package segment_test

import "runtime"

// draws is how many random cases a test looks at: an eighth of them as compiled
// for the browser, where they take three times as long and the same whole numbers
// come out.
func draws(n int) int {
	if runtime.GOARCH == "wasm" {
		return n / 8
	}
	return n
}
