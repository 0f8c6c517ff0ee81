package document

import (
	"slices"
	"sort"
	"strings"
	"unicode"
)

// pairwiseUpTo is the number of members up to which every name of a map is
// compared with every other; above it the hashes are sorted.
const pairwiseUpTo = 16

// foldRune gives one character for all that are equal but for case under
// Unicode simple folding: the lower-case letter in ASCII, else the smallest.
func foldRune(r rune) rune {
	if r < 0x80 {
		if 'A' <= r && r <= 'Z' {
			r += 'a' - 'A'
		}
		return r
	}
	least := r
	for f := unicode.SimpleFold(r); f != r; f = unicode.SimpleFold(f) {
		least = min(least, f)
	}
	if least < 0x80 {
		return foldRune(least)
	}
	return least
}

// foldName gives one name for all that strings.EqualFold calls equal.
func foldName(name string) string {
	if strings.IndexFunc(name, func(r rune) bool { return foldRune(r) != r }) < 0 {
		return name
	}
	return strings.Map(foldRune, name)
}

// foldHash is equal for names that are equal but for case (32-bit FNV-1a, a
// character at a time).
func foldHash(name string) uint32 {
	h := uint32(2166136261)
	for i := 0; i < len(name); i++ {
		c := name[i]
		if c >= 0x80 {
			h = 2166136261
			for _, r := range name {
				h = (h ^ uint32(foldRune(r))) * 16777619
			}
			return h
		}
		if 'A' <= c && c <= 'Z' {
			c += 'a' - 'A'
		}
		h = (h ^ uint32(c)) * 16777619
	}
	return h
}

// twin is a member whose name is, but perhaps for case, that of an earlier one.
type twin struct {
	at, first int  // positions in the map
	exact     bool // written like an earlier one
}

// twins returns the members of a map whose names came before, by position. It
// takes n log n steps whatever the names are.
func twins(names []string) []twin {
	type folded struct {
		name string
		at   int
	}
	order := make([]folded, len(names))
	for i, name := range names {
		order[i] = folded{foldName(name), i}
	}
	slices.SortFunc(order, func(a, b folded) int {
		if c := strings.Compare(a.name, b.name); c != 0 {
			return c
		}
		return a.at - b.at
	})
	var found []twin
	var spellings []string // of the present group; a name has few in an honest file
	first := 0
	for i, f := range order {
		name := names[f.at]
		if i == 0 || f.name != order[i-1].name {
			first, spellings = f.at, append(spellings[:0], name)
			continue
		}
		exact := slices.Contains(spellings, name)
		if !exact && len(spellings) < 8 {
			spellings = append(spellings, name)
		}
		found = append(found, twin{f.at, first, exact})
	}
	sort.Slice(found, func(i, j int) bool { return found[i].at < found[j].at })
	return found
}

// mayHaveTwins reports whether two hashes are equal. It may reorder hashes.
func mayHaveTwins(hashes []uint32) bool {
	if len(hashes) <= pairwiseUpTo {
		for i, h := range hashes {
			for _, g := range hashes[:i] {
				if g == h {
					return true
				}
			}
		}
		return false
	}
	slices.Sort(hashes)
	for i := 1; i < len(hashes); i++ {
		if hashes[i] == hashes[i-1] {
			return true
		}
	}
	return false
}
