package document

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/published"
)

// Document and pointers of RFC 6901, section 5, seen.
func TestPointersOfRFC6901(t *testing.T) {
	n := mustRead(t, `{"foo":["bar","baz"],"":0,"a/b":1,"c%d":2,"e^f":3,"g|h":4,"i\\j":5,"k\"l":6," ":7,"m~n":8}`)
	for path, want := range map[string]string{
		"/foo": `["bar","baz"]`, "/foo/0": `"bar"`, "/": "0", "/a~1b": "1", "/c%d": "2", "/e^f": "3", "/g|h": "4",
		`/i\j`: "5", `/k"l`: "6", "/ ": "7", "/m~0n": "8",
	} {
		require.NotNil(t, n.At(path), path)
		published.CheckText(t, published.Source{Document: "RFC 6901", Place: "section 5", Mark: basis.Seen}, path, want, n.At(path).Compact())
	}
	assert.Same(t, n, n.At(""))
}

func TestPointersToNothing(t *testing.T) {
	n := mustRead(t, `{"a":[1,2],"~":{"~1":3},"b":"text"}`)
	for _, path := range []string{
		"a", "/a/2", "/a/-", "/a/01", "/a/+1", "/a/", "/a/99999999999999999999", "/c", "/b/0", "/~", "/~2", "/a~", "/a/0/0",
	} {
		assert.Nil(t, n.At(path), path)
	}
	assert.Equal(t, "3", n.At("/~0/~01").Raw())
}

func TestJoinedPointersLeadBack(t *testing.T) {
	rnd := rand.New(rand.NewSource(2))
	for range 500 {
		root := NewMap()
		n, path, names := root, "", []string(nil)
		for range 1 + rnd.Intn(5) {
			name := namePool[rnd.Intn(len(namePool))] + namePool[rnd.Intn(len(namePool))]
			inner := NewMap()
			n.Set(name, inner)
			n, path, names = inner, Join(path, name), append(names, name)
		}
		n.Set("end", NewBool(true))
		require.True(t, root.At(path).Get("end").Bool(), path)
		split, ok := Split(path)
		require.True(t, ok)
		require.Equal(t, names, split)
	}
}
