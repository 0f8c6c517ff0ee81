package document

import (
	"bytes"
	"encoding/json"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// mustRead reads a text that is right.
func mustRead(t testing.TB, text string) *Node {
	t.Helper()
	n, complaints := ReadText(text)
	require.Empty(t, complaints.List, text)
	require.NotNil(t, n, text)
	return n
}

// independent reads a text with encoding/json.
func independent(t testing.TB, text []byte) any {
	t.Helper()
	var v any
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.UseNumber()
	require.NoError(t, decoder.Decode(&v))
	return v
}

// says compares a tree with what encoding/json made of the same text.
func says(n *Node, v any) bool {
	switch v := v.(type) {
	case nil:
		return n.Kind() == Null
	case bool:
		return n.Kind() == Bool && n.Bool() == v
	case string:
		return n.Kind() == Text && n.Text() == v
	case json.Number:
		return n.Kind() == Number && n.Raw() == string(v)
	case []any:
		if n.Kind() != List || n.Len() != len(v) {
			return false
		}
		for i, item := range v {
			if !says(n.Item(i), item) {
				return false
			}
		}
		return true
	case map[string]any:
		if n.Kind() != Map || n.Len() != len(v) {
			return false
		}
		for name, value := range v {
			if !says(n.Get(name), value) {
				return false
			}
		}
		return true
	}
	return false
}

// namePool has names that sort differently as UTF-8 and UTF-16, need escapes,
// or are empty; no two are equal but for case.
var namePool = []string{
	"", "a", "b", "workingLoad", "mass", "x/y", "m~n", "quote\"", "back\\slash", "line\nend", "\u0001", "ß", "é",
	"\u2028", "\ufb33", "😀", "𝒳", "\u20ac", "0", "1", "01", "-", "name with spaces", strings.Repeat("long", 12),
}

// randomNode makes a tree of at most depth levels; without nulls where bare.
func randomNode(rnd *rand.Rand, depth int, bare bool) *Node {
	kinds := 6
	if depth == 0 {
		kinds = 4
	}
	switch rnd.Intn(kinds) {
	case 0:
		return NewBool(rnd.Intn(2) == 0)
	case 1:
		numbers := []string{"0", "-0", "-17", "1.50", "1e3", "2.5E-7", "9007199254740993", "120"}
		return NewNumber(numbers[rnd.Intn(len(numbers))])
	case 2:
		if bare {
			return NewInt(rnd.Intn(1000))
		}
		return NewNull()
	case 3:
		return NewText(namePool[rnd.Intn(len(namePool))] + namePool[rnd.Intn(len(namePool))])
	case 4:
		list := NewList()
		for range rnd.Intn(6) {
			list.Append(randomNode(rnd, depth-1, bare))
		}
		return list
	}
	return randomMap(rnd, depth, bare)
}

func randomMap(rnd *rand.Rand, depth int, bare bool) *Node {
	m := NewMap()
	size := rnd.Intn(6)
	if rnd.Intn(8) == 0 {
		size = rnd.Intn(40) // enough for an index
	}
	for range size {
		name := namePool[rnd.Intn(len(namePool))]
		if rnd.Intn(3) == 0 {
			name += strconv.Itoa(rnd.Intn(40))
		}
		m.Set(name, randomNode(rnd, depth-1, bare))
	}
	return m
}
