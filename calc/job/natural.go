package job

// compareNatural orders names as people do: runs of digits count as numbers,
// so C2 stands before C14. It returns -1, 0 or 1.
func compareNatural(a, b string) int {
	i, k := 0, 0
	for i < len(a) && k < len(b) {
		if digit(a[i]) && digit(b[k]) {
			si, sk := i, k
			for i < len(a) && digit(a[i]) {
				i++
			}
			for k < len(b) && digit(b[k]) {
				k++
			}
			if c := compareDigits(a[si:i], b[sk:k]); c != 0 {
				return c
			}
			continue
		}
		if a[i] != b[k] {
			if a[i] < b[k] {
				return -1
			}
			return 1
		}
		i++
		k++
	}
	switch {
	case len(a)-i < len(b)-k:
		return -1
	case len(a)-i > len(b)-k:
		return 1
	}
	return 0
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

func compareDigits(a, b string) int {
	for len(a) > 1 && a[0] == '0' {
		a = a[1:]
	}
	for len(b) > 1 && b[0] == '0' {
		b = b[1:]
	}
	switch {
	case len(a) != len(b):
		if len(a) < len(b) {
			return -1
		}
		return 1
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// Natural says whether a name stands before another as people order them.
func Natural(a, b string) bool { return compareNatural(a, b) < 0 }
