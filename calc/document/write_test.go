package document

import (
	"bytes"
	"encoding/json"
	"math/rand"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStableLayout(t *testing.T) {
	n := mustRead(t, `{"format":"a job","schema":1,"now":{"title":"<Quay & \u2028 wall>","rigs":{"r1":{"name":"A","circuits":{"b":
{"stroke":"1.6 m","maxPressure":"25 MPa"}},"empty":{},"none":[]}}},"records":{"d1":{"kind":"drive","lines":["75 0.50 2.0","76 1.00 2.5"],
"long":["75 0.50 2.0 and a remark that is long","76 1.00 2.5 and a remark that is long","77 1.50 3.0, and so on until the line is full"],
"events":[{"s":0,"is":"set-up"},{"s":20,"is":"segment"}]}},"n":[1,[2]]}`)
	want := `{
 "format": "a job",
 "schema": 1,
 "now": {
  "title": "<Quay & ` + "\u2028" + ` wall>",
  "rigs": {
   "r1": { "name": "A", "circuits": { "b": { "stroke": "1.6 m", "maxPressure": "25 MPa" } }, "empty": {}, "none": [] }
  }
 },
 "records": {
  "d1": {
   "kind": "drive",
   "lines": ["75 0.50 2.0", "76 1.00 2.5"],
   "long": [
    "75 0.50 2.0 and a remark that is long", "76 1.00 2.5 and a remark that is long",
    "77 1.50 3.0, and so on until the line is full"
   ],
   "events": [{ "s": 0, "is": "set-up" }, { "s": 20, "is": "segment" }]
  }
 },
 "n": [1, [2]]
}
`
	assert.Equal(t, want, string(n.Stable()))
}

func TestStableOfOneValue(t *testing.T) {
	for text, want := range map[string]string{
		`1.50`: "1.50\n", `"a"`: "\"a\"\n", `null`: "null\n", `[ ]`: "[]\n", `{ }`: "{}\n", `{"a":1}`: "{ \"a\": 1 }\n", `[1,2]`: "[1, 2]\n",
	} {
		assert.Equal(t, want, string(mustRead(t, text).Stable()))
	}
}

// A line of exactly 120 characters stands, one of 121 does not; characters
// count, not bytes; indent and name count, the comma behind does not.
func TestLineLimit(t *testing.T) {
	for _, letter := range []string{"x", "ö", "😀"} {
		for _, c := range []struct {
			length int
			lines  int
		}{{120, 4}, {121, 6}} {
			// one of indent, `"n": [`, the text with its quotes, and ]
			text := strings.Repeat(letter, c.length-len(` "n": [""]`))
			n := NewMap()
			n.Set("n", NewList(NewText(text)))
			n.Set("m", NewInt(1))
			out := string(n.Stable())
			assert.Equal(t, c.lines, strings.Count(out, "\n"), "%d %s", c.length, letter)
			line := strings.Split(out, "\n")[1]
			if c.lines == 4 {
				assert.Equal(t, 121, utf8.RuneCountInString(line), "the line and its comma")
			}
		}
	}
}

// A list without maps and lists in it fills its lines, to 120 characters and no
// further; an item that is longer has a line of its own.
func TestListsFillTheirLines(t *testing.T) {
	item := func(length int) *Node { return NewText(strings.Repeat("ö", length-len(`""`))) }
	row := func(items ...*Node) string {
		var said []string
		for _, n := range items {
			said = append(said, n.Compact())
		}
		return " " + strings.Join(said, ", ")
	}
	rows := [][]*Node{
		{item(59), item(58)}, // 1 of indent, 59, 2 between, 58: 120 characters
		{item(60)},           // 121 with the next
		{item(58), NewInt(123), NewBool(true)},
		{item(130)},
		{NewNull(), NewText(""), item(104), item(3)},
		{item(2), NewNumber("1.50")},
	}
	var lines []string
	for _, items := range rows {
		lines = append(lines, row(items...))
	}
	assert.Equal(t, 120, utf8.RuneCountInString(lines[0]))
	assert.Equal(t, 120, utf8.RuneCountInString(lines[4]))
	assert.Equal(t, "[\n"+strings.Join(lines, ",\n")+"\n]\n", string(NewList(slices.Concat(rows...)...).Stable()))
}

func TestEscapesAreFewest(t *testing.T) {
	var all strings.Builder
	for r := rune(0); r < 0x3000; r++ {
		if r < 0xd800 {
			all.WriteRune(r)
		}
	}
	all.WriteString("😀</script>")
	out := NewText(all.String()).Compact()
	// RFC 8259, section 7: quote, backslash and U+0000 to U+001F are escaped.
	want := strings.Count(all.String(), `"`) + strings.Count(all.String(), `\`) + 32
	assert.Equal(t, want, strings.Count(strings.ReplaceAll(out, `\\`, `\x`), `\`))
	assert.True(t, strings.HasPrefix(out, `"\u0000\u0001\u0002\u0003\u0004\u0005\u0006\u0007\b\t\n\u000b\f\r\u000e`))
	assert.Contains(t, out, `\u001f !\"#`)
	assert.Contains(t, out, `[\\]`)
	assert.Equal(t, all.String(), mustRead(t, out).Text())
	assert.Equal(t, all.String(), independent(t, []byte(out)))
}

func TestRoundTrips(t *testing.T) {
	rnd := rand.New(rand.NewSource(5))
	kinds, plain := map[Kind]int{}, 0
	for range 3000 {
		n := randomNode(rnd, 5, false)
		kinds[n.Kind()]++
		stable := n.Stable()
		back, complaints := Read(stable)
		require.Empty(t, complaints.List, string(stable))
		require.True(t, back.Equal(n), string(stable))
		require.Equal(t, string(stable), string(back.Stable()))
		require.True(t, says(n, independent(t, stable)), string(stable))
		for line := range strings.Lines(string(stable)) {
			if utf8.RuneCountInString(line) > lineLimit+2 { // comma and line end
				require.NotContains(t, line, ", \"", "only a text alone may be longer")
			}
		}
		if _, room := n.room(0, 0); len(stable) == utf8.RuneCount(stable) && bytes.IndexByte(stable, '\\') < 0 {
			plain++
			require.Equal(t, len(stable), room+1, string(stable))
		}

		compact := n.Compact()
		require.True(t, mustRead(t, compact).Equal(n), compact)
		require.True(t, json.Valid([]byte(compact)), compact)

		canonical := n.Canonical()
		back, complaints = Read(canonical)
		require.Empty(t, complaints.List, string(canonical))
		require.Equal(t, string(canonical), string(back.Canonical()))
		require.Equal(t, Digest(n), Digest(back))
	}
	require.Len(t, kinds, 6)
	require.Greater(t, plain, 1000, "the room that is made beforehand is right")
}
