package published_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/published"
)

// mute is a test that only remembers whether it failed.
type mute struct {
	testing.TB
	failed bool
}

func (m *mute) Helper()               {}
func (m *mute) Errorf(string, ...any) { m.failed = true }
func (m *mute) Fatalf(string, ...any) { m.failed = true; panic("stop") }
func (m *mute) Fatal(...any)          { m.failed = true; panic("stop") }

var source = published.Source{Document: "A book, 2nd edition", Place: "Table 7", Mark: basis.Memory}

func failed(want string, got float64, tol published.Tolerance) bool {
	m := &mute{}
	published.Check(m, source, "x", want, got, tol)
	return m.failed
}

func TestRead(t *testing.T) {
	for text, want := range map[string][2]float64{
		"1.40": {1.4, 0.01}, "32": {32, 1}, "-0.1712": {-0.1712, 0.0001}, "4.448 222 E+03": {4448.222, 0.001}, "0.614969E-02": {0.00614969, 1e-8}, "1e30": {1e30, 1e30},
	} {
		value, unit, err := published.Read(text)
		require.NoError(t, err, text)
		assert.InEpsilon(t, want[0], value, 1e-15, text)
		assert.InEpsilon(t, want[1], unit, 1e-12, text)
	}
	_, _, err := published.Read("12/7")
	assert.Error(t, err)
}

// A check fails where it must: at more than half of the last digit, at any
// difference where it is exact, and where nobody says why it is looser.
func TestACheckCanFail(t *testing.T) {
	t.Setenv(published.FileVariable, "")
	nan := 0.0
	nan /= nan
	for _, c := range []struct {
		want string
		got  float64
		tol  published.Tolerance
		bad  bool
	}{
		{"2.50", 2.5049, published.Printed, false}, {"2.50", 2.5051, published.Printed, true}, {"2.50", 2.4949, published.Printed, true},
		{"2.50", 2.5, published.Exact, false}, {"2.50", 2.5 + 1e-15, published.Exact, true},
		{"2.50", 2.509, published.Within(0.01, "cut, not rounded"), false}, {"2.50", 2.511, published.Within(0.01, "cut, not rounded"), true},
		{"2.50", 2.5, published.Within(0.01, ""), true}, {"2.50", 2.5, published.Part(0.01, ""), true},
		{"2.50", 2.50001, published.Part(1e-6, ""), true}, {"2.50", 2.5000001, published.Part(1e-6, ""), false},
		{"2.50", nan, published.Printed, true},
	} {
		assert.Equal(t, c.bad, failed(c.want, c.got, c.tol), "%v", c)
	}
	m := &mute{}
	published.CheckText(m, source, "x", "a", "b")
	assert.True(t, m.failed)
}

func TestReport(t *testing.T) {
	name := filepath.Join(t.TempDir(), "lines")
	t.Setenv(published.FileVariable, name)
	published.Check(t, source, "x at 10", "2.50", 2.504, published.Printed)
	published.Check(t, source, "x at 9", "2.5", 2.59, published.Within(0.1, "cut, not rounded"))
	published.Check(t, source, "x at 9", "2.5", 2.59, published.Within(0.1, "cut, not rounded"))
	published.Check(&mute{}, published.Worked("statics"), "y", "12", 13, published.Printed)
	published.CheckText(t, source.At("page 3"), "sign", "\r", "\r")
	t.Setenv(published.FileVariable, "")

	file, err := os.Open(name)
	require.NoError(t, err)
	defer file.Close()
	lines, err := published.ReadLines(file)
	require.NoError(t, err)
	require.Len(t, lines, 4, "the same comparison counts once")
	var text strings.Builder
	published.Print(&text, lines)
	var words []string
	for line := range strings.Lines(text.String()) {
		words = append(words, strings.Join(strings.Fields(line), " "))
	}
	assert.Subset(t, words, []string{
		"Table 7 x at 9 2.5 2.5900 9.0e-02 3.6e-02 1.0e-01 M ok, looser: cut, not rounded",
		"Table 7 x at 10 2.50 2.50400 4.0e-03 1.6e-03 5.0e-03 M ok",
		`page 3 sign "\r" "\r" same exact M ok`,
		"y 12 13.000 1.0e+00 8.3e-02 5.0e-01 NOT OK",
		"A book, 2nd edition 3 0 3.6e-02 0.9 1 M 3",
		"statics 1 1 8.3e-02 1 0",
	})
	assert.Less(t, strings.Index(text.String(), "x at 9"), strings.Index(text.String(), "x at 10"), "numbers in their order")
}
