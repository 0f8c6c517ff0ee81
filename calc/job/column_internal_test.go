package job

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestColumns(t *testing.T) {
	drive := kindOf("drive").columns
	names := func(text string) (list []string) {
		columns, ok := ParseColumns(text, drive)
		require.True(t, ok, text)
		for _, c := range columns {
			list = append(list, c.Name)
		}
		return list
	}
	assert.Equal(t, []string{"at", "toe", "reading"}, names("s m MPa"))
	assert.Equal(t, []string{"at", "reading", "toe"}, names("s bar ft"))
	assert.Equal(t, []string{"at", "head", "toe", "still"}, names("at=s head=m m still=yn"))
	for _, text := range []string{"", "s", "m s", "min m", "s m m", "s m head", "s  m", "s m ", " s m", "s kN", "s yn", "s still=y", "s m MPa MPa", "s entered=min", "s =m", "s m=", "s toe=m m", "s ton"} {
		columns, ok := ParseColumns(text, drive)
		assert.False(t, ok, text)
		assert.Nil(t, columns, text)
	}
	// A gauge against a gauge: the second pressure is the reference.
	pair, ok := ParseColumns("MPa MPa", certificateColumns)
	require.True(t, ok)
	assert.Equal(t, "reference", pair[1].Name)
}

func TestLinesUnderColumns(t *testing.T) {
	columns, ok := ParseColumns("s m MPa still=yn", kindOf("drive").columns)
	require.True(t, ok)
	levels, ok := ParseColumns("s m", kindOf("level").columns)
	require.True(t, ok)
	for _, c := range []struct {
		columns []Column
		text    string
		fits    bool
	}{
		{columns, "75 0.50 2.0 y", true}, {columns, "75 - - -", true}, {columns, "0 12 2 n", true},
		{columns, "", false}, {columns, "75", false}, {columns, "75 0.50 2.0", false}, {columns, "75 0.50 2.0 y y", false},
		{columns, "75 0.50 2.0 y ", false}, {columns, " 75 0.50 2.0 y", false}, {columns, "- 0.50 2.0 y", false}, {columns, "75.5 0.50 2.0 y", false},
		{columns, "75 -0.50 2.0 y", false}, {columns, "75 .5 2.0 y", false}, {columns, "75 0. 2.0 y", false}, {columns, "75 0,5 2.0 y", false},
		{columns, "75 0.50 2.0 1", false}, {columns, "75 0.50 2e1 y", false}, {columns, "75 301 2.0 y", false}, {columns, "75 0.50 201 y", false},
		{columns, "1234567890 0.50 2.0 y", false}, {columns, "75 0.1234567890123456789 2.0 y", false}, {columns, "75 00000000000000000000 2.0 y", false},
		{levels, "0 -11.35", true}, {levels, "0 --11.35", false}, {levels, "0 12001", false}, {levels, "0 -12001", false},
	} {
		assert.Equal(t, c.fits, lineFits(c.text, c.columns), c.text)
	}
}

// Whatever fits under some columns is taken by the published patterns, so no
// file of ours is refused by a validator.
func TestPatternsTakeWhatFits(t *testing.T) {
	for _, kind := range recordKinds {
		columns := regexp.MustCompile("^" + columnsPattern(kind.columns) + "$")
		lines := regexp.MustCompile("^" + linePattern(kind.columns) + "$")
		declaration := columnsExample(kind.columns)
		declared, ok := ParseColumns(declaration, kind.columns)
		require.True(t, ok, "%s: %s", kind.kind, declaration)
		assert.Regexp(t, columns, declaration)
		line := lineExample(declared)
		assert.True(t, lineFits(line, declared), line)
		assert.Regexp(t, lines, line)
		assert.NotContains(t, columnsAllowed(kind.columns), "=;")
		assert.NotEmpty(t, linesAllowed(declared))
	}
}

func TestNoAllocationForALine(t *testing.T) {
	columns, _ := ParseColumns("s m MPa", kindOf("drive").columns)
	assert.Zero(t, testing.AllocsPerRun(100, func() { lineFits("75 0.50 2.0", columns) }))
}
