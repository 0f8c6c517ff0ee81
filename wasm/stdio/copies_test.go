package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/desk"
	"gaugewright/calc/document"
)

const (
	pile     = "/now/piles/0193b000-0000-7000-8000-000000000601"
	loadPath = pile + "/workingLoad"
)

// typed is the example as somebody left it who typed a text at a path.
func typed(t *testing.T, who, path, typed string) string {
	d := desk.New()
	ask := func(request string, data []byte) []byte {
		answer, out := d.Call(request, data)
		require.True(t, strings.HasPrefix(answer, `{"ok":true`), answer)
		return out
	}
	ask(`{"verb":"open","doc":"d","as":"file"}`, []byte(example(t)))
	ask(`{"verb":"enter","doc":"d","sitting":{"id":"`+who+`","who":"`+who+`","device":"phone","on":"2026-11-03T07:00:00Z"},
		"at":"2026-11-03T07:01:00Z","do":"type","path":"`+path+`","typed":"`+typed+`"}`, nil)
	return string(ask(`{"verb":"save","doc":"d"}`, nil))
}

func inFile(t *testing.T, text string) string {
	name := filepath.Join(t.TempDir(), "other.json")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
	return name
}

func read(t *testing.T, text string) *document.Node {
	n, complaints := document.ReadText(text)
	require.True(t, complaints.None(), text)
	return n
}

func TestJoinIsTheSameEitherWay(t *testing.T) {
	ada, ben := typed(t, "Ada", loadPath, "950"), typed(t, "Ben", loadPath, "800")
	status, joined, says := stdio(t, ada, "join", inFile(t, ben))
	assert.Zero(t, status, says)
	assert.Contains(t, says, "1 entries of the history, 0 lines")
	assert.Contains(t, says, "Fields with two values: 1.")
	assert.Contains(t, says, "Working load: 950 kN (Ada, phone, 2026-11-03T07:01:00Z) or 800 kN (Ben, phone, 2026-11-03T07:01:00Z)")
	status, back, _ := stdio(t, ben, "join", inFile(t, ada))
	assert.Zero(t, status)
	assert.Equal(t, joined, back)
	status, again, says := stdio(t, joined, "join", inFile(t, ada))
	assert.Zero(t, status)
	assert.Equal(t, joined, again, "a copy that is there already changes nothing")
	assert.Contains(t, says, " 0 entries of the history")
}

// The example joined with itself is the example: the union adds nothing.
func TestJoinOfTheExampleWithItself(t *testing.T) {
	status, joined, says := stdio(t, example(t), "join", "../../examples/quay-shed.json")
	assert.Zero(t, status)
	assert.Equal(t, 1, strings.Count(says, "\n"), says)
	assert.True(t, read(t, joined).Equal(read(t, example(t))))
}

// What a host had journalled and no core had taken in is an entry after a join,
// whichever file it stood in.
func TestJoinTakesInWhatWasPending(t *testing.T) {
	pending := strings.TrimSuffix(strings.TrimSpace(example(t)), "}") + `, "pending": [{"verb":"enter","sitting":{"id":"Cleo"},
		"at":"2026-11-03T08:00:00Z","do":"type","path":"` + loadPath + `","typed":"875"}]}`
	ada := typed(t, "Ada", pile+"/cutoff", "11.25")
	_, joined, says := stdio(t, ada, "join", inFile(t, pending))
	assert.Contains(t, says, "1 entries")
	assert.Contains(t, joined, `"875 kN"`)
	assert.NotContains(t, joined, `"pending"`)
	_, back, _ := stdio(t, pending, "join", inFile(t, ada))
	assert.Equal(t, joined, back)
}

func TestHistory(t *testing.T) {
	ada := typed(t, "Ada", loadPath, "950")
	status, out, problems := stdio(t, ada, "history", loadPath)
	assert.Zero(t, status, problems)
	h := read(t, out)
	assert.Equal(t, "gaugewright history", h.Get("format").Text())
	require.Equal(t, 2, h.Get("rows").Len())
	assert.Equal(t, "950 kN, Ada, phone", h.At("/rows/0/says").Text()+", "+h.At("/rows/0/who").Text()+", "+h.At("/rows/0/device").Text())
	status, out, _ = stdio(t, ada, "history")
	assert.Zero(t, status)
	whole := read(t, out)
	assert.Equal(t, 3, whole.Get("rows").Len())
	assert.Greater(t, whole.At("/rows/2/fields").Len(), 100, "an entry is told to its end")
}

func TestCompare(t *testing.T) {
	ada := typed(t, "Ada", loadPath, "950")
	status, out, problems := stdio(t, ada, "compare", "../../examples/quay-shed.json")
	assert.Zero(t, status, problems)
	c := read(t, out)
	assert.Equal(t, "1 1 0 same", c.Get("count").Raw()+" "+c.Get("onlyHere").Raw()+" "+c.Get("onlyThere").Raw()+" "+c.Get("records").Text())
	assert.Equal(t, loadPath, c.At("/differences/0/path").Text())
	assert.Equal(t, "950 kN, 900 kN", c.At("/differences/0/before").Text()+", "+c.At("/differences/0/after").Text())

	// Files of two jobs have no sitting in common; things are named by the file
	// that has them.
	status, out, _ = stdio(t, ada, "compare", "../../testdata/golden/schema-1.json")
	assert.Zero(t, status)
	assert.Contains(t, out, `"label": "Press 240: Mass of the rig without ballast"`)
	assert.Contains(t, out, `"label": "Press 300: Mass of the rig without ballast"`)
	assert.Equal(t, "different", read(t, out).Get("records").Text())

	status, out, _ = stdio(t, ada, "compare", "2026-11-03", "now")
	assert.Zero(t, status)
	c = read(t, out)
	assert.Equal(t, "1", c.Get("count").Raw())
	assert.Equal(t, "900 kN", c.At("/differences/0/before").Text())
	status, out, _ = stdio(t, ada, "compare", "2026-11-03T07:01:00Z", "2026-11-04")
	assert.Zero(t, status)
	assert.Equal(t, "0", read(t, out).Get("count").Raw())
}

func TestBadCopies(t *testing.T) {
	golden := "../../testdata/golden/schema-1.json"
	newer := strings.Replace(example(t), `"minReader": 1`, `"minReader": 2`, 1)
	for _, c := range []struct {
		in, says string
		status   int
		args     []string
	}{
		{example(t)[:500], "stdin: Line ", 1, []string{"join", golden}},
		{example(t), "other.json: Line 1: ", 1, []string{"join", inFile(t, "not a job")}},
		{example(t), "other.json: Line ", 1, []string{"compare", inFile(t, example(t)[:500])}},
		{example(t), "is another job", 1, []string{"join", golden}},
		{example(t), "newer version", 1, []string{"join", inFile(t, newer)}},
		{newer, "newer version", 1, []string{"join", inFile(t, example(t))}},
		{example(t), "no/such/file", 2, []string{"join", "no/such/file"}},
		{example(t), "Nothing was ever stated at “/now/pile”", 1, []string{"history", "/now/pile"}},
		{example(t), "Nothing was ever stated at “workingLoad”", 1, []string{"history", "workingLoad"}},
		{"", "empty", 1, []string{"history"}},
		{"", "empty", 1, []string{"compare", "2026-11-03", "now"}},
		{example(t), "“yesterday” is no moment", 2, []string{"compare", "yesterday", "now"}},
		{example(t), "“now” is no moment", 2, []string{"compare", "now", "2026-11-03"}},
		{example(t), "“2026-02-30” is no moment", 2, []string{"compare", "2026-11-03", "2026-02-30"}},
	} {
		status, out, problems := stdio(t, c.in, c.args...)
		assert.Equal(t, c.status, status, c.says)
		assert.Empty(t, out, c.says)
		assert.Contains(t, problems, c.says)
	}
}
