package job_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
)

func example(t *testing.T) string {
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	return string(data)
}

func read(t *testing.T, text string) *document.Node {
	root, complaints := document.Read([]byte(text))
	require.True(t, complaints.None(), "%v", complaints.List)
	return root
}

func TestTheExampleIsAJobFile(t *testing.T) {
	assert.Empty(t, job.Check(read(t, example(t))).List)
}

// Each spoiled file is refused at the place where it is spoiled.
func TestSpoiledFiles(t *testing.T) {
	for _, c := range []struct{ from, to, code, path string }{
		{`"gaugewright job"`, `"some other file"`, "job.format", "/format"},
		{`"schema": 1`, `"schema": "1"`, "job.schema", "/schema"},
		{`"minReader": 1`, `"minReader": 0`, "job.schema", "/minReader"},
		{`"mass": "180 t"`, `"mass": 180`, "job.kind", "/mass"},
		{`"mass": "180 t"`, `"mass": null`, "job.kind", "/mass"},
		{`"mass": "180 t"`, `"mass": "180 ton"`, "job.quantity", "/mass"},
		{`"mass": "180 t"`, `"mass": "180t"`, "job.quantity", "/mass"},
		{`"mass": "180 t"`, `"mass": "180 kN"`, "job.quantity", "/mass"},
		{`"mass": "180 t"`, `"mass": "1,200 t"`, "job.quantity", "/mass"},
		{`"mass": "180 t"`, `"mass": "0 t"`, "job.range", "/mass"},
		{`"ballast": "40 t"`, `"ballast": "-1 t"`, "job.range", "/ballast"},
		{`"bore": "200 mm"`, `"bore": "-200 mm"`, "job.range", "/groups/0/bore"},
		{`"number": "4"`, `"number": "4.0"`, "job.count", "/groups/0/number"},
		{`"number": "4"`, `"number": "0"`, "job.range", "/groups/0/number"},
		{`"side": "bore"`, `"side": "left"`, "job.choice", "/groups/0/side"},
		{`"low": "0.95"`, `"low": "1.05"`, "job.range", "/efficiency/low"},
		{`"division": "0.5 MPa"`, `"division": "0 MPa"`, "job.range", "/division"},
		{`"factor": "2.0"`, `"factor": "0.9"`, "job.range", "/factor"},
		{`"gripHeight": "0.60 m"`, `"gripHeight": "unknown"`, "job.quantity", "/gripHeight"},
		{`"founding": "-5.40 m"`, `"founding": "-5.40 MPa"`, "job.quantity", "/founding"},
		{`"columns": "s m"`, `"columns": "m s"`, "job.record", "/columns"},
		{`["0 10.85"]`, `["0 10.85 m"]`, "job.record", "/lines/0"},
		{`["0 10.85"]`, `["10.85"]`, "job.record", "/lines/0"},
	} {
		text := strings.Replace(example(t), c.from, c.to, 1)
		require.NotEqual(t, example(t), text, c.from)
		found := job.Check(read(t, text))
		require.NotEmpty(t, found.List, c.to)
		assert.Equal(t, c.code, found.List[0].Code, c.to)
		assert.True(t, strings.HasSuffix(found.List[0].Path, c.path), "%s is at %s", c.to, found.List[0].Path)
		assert.NotEmpty(t, found.List[0].Found, c.to)
		assert.NotEmpty(t, found.List[0].Allowed, c.to)
	}
}

func TestReferencesMustLeadSomewhere(t *testing.T) {
	root := read(t, example(t))
	j := job.View(root)
	pile := j.Piles()[0]
	for _, name := range []string{"rig", "type", "criterion"} {
		spoiled := root.Clone()
		spoiled.At("/now/piles/"+pile).Set(name, document.NewText("nowhere"))
		found := job.Check(spoiled)
		require.NotEmpty(t, found.List, name)
		assert.Equal(t, "job.reference", found.List[0].Code, name)
	}
}

// What is impossible together is listed, and the file opens: a union of two
// good copies may be so.
func TestProblems(t *testing.T) {
	assert.Empty(t, job.Problems(read(t, example(t))).List)
	for _, c := range []struct{ from, to, code, path string }{
		{`"rod": "140 mm", "side": "bore"`, `"rod": "200 mm", "side": "bore"`, "job.rod", "/groups/0/rod"},
		{`"high": "1.00"`, `"high": "0.90"`, "job.efficiency", "/efficiency/low"},
		{`"circuit": "0193b000-0000-7000-8000-000000000111"`, `"circuit": "0193b000-0000-7000-8000-000000000121"`, "job.circuit", "/circuit"},
	} {
		root := read(t, strings.Replace(example(t), c.from, c.to, 1))
		assert.Empty(t, job.Check(root).List, c.to)
		found := job.Problems(root)
		require.Len(t, found.List, 1, c.to)
		assert.Equal(t, c.code, found.List[0].Code)
		assert.True(t, strings.HasSuffix(found.List[0].Path, c.path), found.List[0].Path)
		assert.NotEmpty(t, found.List[0].Found)
		assert.NotEmpty(t, found.List[0].Allowed)
	}
}

func TestAllComplaintsAreListed(t *testing.T) {
	text := strings.ReplaceAll(example(t), `0 kN"`, `0 ton"`)
	found := job.Check(read(t, text))
	assert.Greater(t, found.Count, 10)
	for _, c := range found.List {
		assert.Equal(t, "job.quantity", c.Code)
	}
}

func TestUnknownNamesAreKept(t *testing.T) {
	text := strings.Replace(example(t), `"title":`, `"weather": {"rain": [1, 2.50]}, "title":`, 1)
	root := read(t, text)
	assert.Empty(t, job.Check(root).List)
	assert.Contains(t, string(root.Stable()), "2.50", "digit for digit")
}

func TestANewerFileIsReadOnly(t *testing.T) {
	text := strings.Replace(example(t), `"minReader": 1`, `"minReader": 2`, 1)
	text = strings.Replace(text, `"schema": 1`, `"schema": 2`, 1)
	root := read(t, strings.Replace(text, `"mass": "180 t"`, `"mass": {"of": "a newer kind"}`, 1))
	assert.Empty(t, job.Check(root).List)
	assert.True(t, job.ReadOnly(root))
}

func TestFourThingsThatAreNotTheSame(t *testing.T) {
	state := func(value string) job.State {
		root := read(t, `{"job":"j","now":{"rigs":{"r":{`+value+`}}}}`)
		r, ok := job.View(root).Rig("r")
		require.True(t, ok)
		return r.GripHeight.State
	}
	assert.Equal(t, job.Blank, state(``))
	assert.Equal(t, job.Blank, state(`"gripHeight":""`))
	assert.Equal(t, job.IsGiven, state(`"gripHeight":"0 m"`))
	assert.Equal(t, job.IsNotKnown, state(`"gripHeight":"not known"`))
	assert.Equal(t, job.IsNotApplicable, state(`"gripHeight":"not applicable"`))
}

func TestPilesStandInNaturalOrder(t *testing.T) {
	root := read(t, `{"job":"j","now":{"piles":{"a":{"mark":"C10"},"b":{"mark":"C9"},"c":{"mark":"B2"},"d":{"mark":"C9"},"e":{"mark":"C009"},"x":{"mark":"C1","struck":{"why":"moved"}}}}}`)
	assert.Equal(t, []string{"c", "b", "d", "e", "a"}, job.View(root).Piles())
}

func TestPatchOfAPlaceInAList(t *testing.T) {
	root := read(t, `{"job":"j","now":{"rigs":{"r":{"circuits":{"c":{"groups":[{"number":"4"},{"number":"2","bore":"125 mm"}]}}}}}}`)
	path := "/now/rigs/r/circuits/c/groups/1/bore"
	patch, ok := job.View(root).Patch(path, document.NewText("160 mm"))
	require.True(t, ok)
	document.MergePatch(root.Get("now"), patch)
	assert.Equal(t, `[{"number":"4"},{"number":"2","bore":"160 mm"}]`, root.At("/now/rigs/r/circuits/c/groups").Compact())
	_, ok = job.View(root).Patch("/now/rigs/r/circuits/c/groups/7/bore", document.NewText("1 mm"))
	assert.False(t, ok)
	_, ok = job.View(root).Patch("/records/x", document.NewText("1"))
	assert.False(t, ok, "records are not stated")
}

func TestEveryFieldCanBeFound(t *testing.T) {
	for _, f := range job.Fields() {
		path := "/now" + strings.NewReplacer("*", "some-id", "#", "0").Replace(f.Pattern)
		found, ok := job.FieldAt(path)
		require.True(t, ok, path)
		assert.Equal(t, f.Pattern, found.Pattern)
		if f.Kind == job.Quantity {
			u, ok := quantity.Find(f.Unit)
			require.True(t, ok, f.Pattern)
			assert.Equal(t, f.Dim, u.Dim, f.Pattern)
			assert.NotEmpty(t, f.Range(u))
		}
	}
	_, ok := job.FieldAt("/now/rigs//mass")
	assert.False(t, ok)
	_, ok = job.FieldAt("/records/x")
	assert.False(t, ok)
}
