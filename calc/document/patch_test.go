package document

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/published"
)

// All test cases of RFC 7396, appendix A, as quoted by others.
func TestMergePatchOfRFC7396(t *testing.T) {
	for _, c := range []struct{ target, patch, want string }{
		{`{"a":"b"}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"b"}`, `{"b":"c"}`, `{"a":"b","b":"c"}`},
		{`{"a":"b"}`, `{"a":null}`, `{}`},
		{`{"a":"b","b":"c"}`, `{"a":null}`, `{"b":"c"}`},
		{`{"a":["b"]}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"c"}`, `{"a":["b"]}`, `{"a":["b"]}`},
		{`{"a":{"b":"c"}}`, `{"a":{"b":"d","c":null}}`, `{"a":{"b":"d"}}`},
		{`{"a":[{"b":"c"}]}`, `{"a":[1]}`, `{"a":[1]}`},
		{`["a","b"]`, `["c","d"]`, `["c","d"]`},
		{`{"a":"b"}`, `["c"]`, `["c"]`},
		{`{"a":"foo"}`, `null`, `null`},
		{`{"a":"foo"}`, `"bar"`, `"bar"`},
		{`{"e":null}`, `{"a":1}`, `{"e":null,"a":1}`},
		{`[1,2]`, `{"a":"b","c":null}`, `{"a":"b"}`},
		{`{}`, `{"a":{"bb":{"ccc":null}}}`, `{"a":{"bb":{}}}`},
	} {
		got := MergePatch(mustRead(t, c.target), mustRead(t, c.patch))
		published.CheckText(t, published.Source{Document: "RFC 7396", Place: "appendix A", Mark: basis.SecondHand}, c.target+" + "+c.patch, c.want, got.Compact())
	}
	assert.Equal(t, `{"a":{}}`, MergePatch(nil, mustRead(t, `{"a":{"b":null}}`)).Compact())
}

func TestInverse(t *testing.T) {
	for _, c := range []struct{ target, patch, want string }{
		{`{"a":1}`, `{"a":2}`, `{"a":1}`},
		{`{"a":1}`, `{"a":1}`, `{"a":1}`},
		{`{}`, `{"a":2}`, `{"a":null}`},
		{`{"a":1}`, `{"a":null}`, `{"a":1}`},
		{`{}`, `{"a":null}`, `{}`},
		{`{"p":{"x":{"load":"900 kN","mark":"C1"}}}`, `{"p":{"x":{"load":"800 kN"}}}`, `{"p":{"x":{"load":"900 kN"}}}`},
		{`{"p":{}}`, `{"p":{"x":{"load":"800 kN"}}}`, `{"p":{"x":null}}`},
		{`{"p":{}}`, `{"p":{}}`, `{}`},
		{`{"a":{"b":1}}`, `{"a":[2]}`, `{"a":{"b":1}}`},
		{`{"a":[1,2]}`, `{"a":{"b":1}}`, `{"a":[1,2]}`},
		{`{"a":[1,2]}`, `{"a":[3]}`, `{"a":[1,2]}`},
		{`{"a":1}`, `5`, `{"a":1}`},
		{`5`, `{"a":1}`, `5`},
	} {
		target := mustRead(t, c.target)
		assert.Equal(t, c.want, Inverse(target, mustRead(t, c.patch)).Compact(), "%s + %s", c.target, c.patch)
		assert.Equal(t, c.target, target.Compact())
	}
	assert.Equal(t, `null`, Inverse(nil, mustRead(t, `{"a":1}`)).Compact())
}

func TestMergeThenInverseIsAsItWas(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	changed := 0
	for range 5000 {
		x, p := randomNode(rnd, 4, true), randomNode(rnd, 4, false)
		if rnd.Intn(4) > 0 {
			x, p = randomMap(rnd, 4, true), randomMap(rnd, 4, false)
		}
		before, patch := x.Clone(), p.Compact()
		was := Inverse(x, p)
		undo := was.Compact()
		y := MergePatch(x, p)
		if !y.Equal(before) {
			changed++
		}
		require.Equal(t, patch, p.Compact(), "the patch is left alone")
		require.Equal(t, undo, was.Compact(), "the inverse shares nothing with the target")
		again := MergePatch(y.Clone(), p)
		require.True(t, again.Equal(y), "%s + %s", before.Compact(), patch)
		back := MergePatch(y, was)
		require.True(t, back.Equal(before), "%s + %s + %s = %s", before.Compact(), patch, undo, back.Compact())
	}
	require.Greater(t, changed, 2000)
}

// A kept patch must not change when later patches reach into what it brought.
func TestKeptPatchesStayAsTheyAre(t *testing.T) {
	first := mustRead(t, `{"piles":{"p1":{"mark":"C1","rows":[{"a":1}]}}}`)
	second := mustRead(t, `{"piles":{"p1":{"mark":"C2"}}}`)
	now := MergePatch(NewMap(), first)
	now = MergePatch(now, second)
	now.At("/piles/p1/rows").Append(NewInt(2))
	now.At("/piles/p1/rows/0").Set("a", NewInt(3))
	assert.Equal(t, `{"piles":{"p1":{"mark":"C1","rows":[{"a":1}]}}}`, first.Compact())
	assert.Equal(t, `{"piles":{"p1":{"mark":"C2","rows":[{"a":3},2]}}}`, now.Compact())
}

func TestMergePatchIsInPlace(t *testing.T) {
	now := mustRead(t, `{"a":{"b":1},"c":{"d":2}}`)
	a, c := now.Get("a"), now.Get("c")
	got := MergePatch(now, mustRead(t, `{"a":{"b":3}}`))
	assert.Same(t, now, got)
	assert.Same(t, a, got.Get("a"))
	assert.Same(t, c, got.Get("c"))
}
