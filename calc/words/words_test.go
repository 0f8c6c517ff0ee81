package words_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

func TestSay(t *testing.T) {
	assert.Equal(t, "The pile allows 14.0 MPa, the set needs 15.0 MPa.", words.Say("reason.closed.pile", "14.0 MPa", "15.0 MPa"))
	assert.Equal(t, "no such code 3 kN", words.Say("no such code", "3 kN"), "a missing sentence never hides a number")
	assert.Equal(t, "a, b and c", words.List([]string{"a", "b", "c"}))
	assert.Equal(t, "a and b", words.List([]string{"a", "b"}))
	assert.Equal(t, "a", words.List([]string{"a"}))
	assert.Empty(t, words.List(nil))
}

func TestFieldsUnitsAndMarksHaveNames(t *testing.T) {
	for _, f := range job.Fields() {
		assert.True(t, words.Has(f.Key()), f.Key())
		for _, c := range append(f.Choices, f.Other...) {
			assert.True(t, words.Has("choice."+c), c)
		}
	}
	for _, d := range []quantity.Dimension{quantity.Forces, quantity.Pressures, quantity.Lengths, quantity.Masses, quantity.Times, quantity.Areas,
		quantity.LineMasses, quantity.Densities, quantity.Dimensionless} {
		for _, u := range quantity.Units(d) {
			assert.True(t, words.Has(u.Name), u.Name)
		}
	}
	for _, e := range basis.All() {
		assert.True(t, words.Has("mark."+string(rune(e.Mark))), e.ID)
	}
}

// codes finds what the other packages may say: every text of the code that
// looks like a code, and the keys of rules and symbols.
func codes(t *testing.T) map[string]string {
	found := map[string]string{}
	literal := regexp.MustCompile(`"([a-z][A-Za-z]*(?:\.[A-Za-z][A-Za-z ]*)+)"`)
	key := regexp.MustCompile(`Key: "([A-Za-z.]+)"`)
	for _, dir := range []string{"calibration", "rig", "pile", "demand", "window", "segment", "head", "assess", "desk", "document", "job", "quantity", "table"} {
		paths, err := filepath.Glob("../" + dir + "/*.go")
		require.NoError(t, err)
		for _, p := range paths {
			if strings.HasSuffix(p, "_test.go") {
				continue
			}
			data, err := os.ReadFile(p)
			require.NoError(t, err)
			for _, line := range strings.Split(string(data), "\n") {
				if strings.HasPrefix(strings.TrimSpace(line), "//") {
					continue
				}
				for _, m := range key.FindAllStringSubmatch(line, -1) {
					prefix := "symbol."
					if strings.Contains(line, "Rule{") || strings.Contains(line, "Symbol:") || strings.Contains(m[1], ".") && !strings.HasPrefix(m[1], "limitReading.") {
						prefix = "rule."
					}
					found[prefix+m[1]] = p
				}
				if strings.Contains(line, "Key:") || strings.Contains(line, "ID:") || strings.Contains(line, "Basis: \"") || strings.Contains(line, "working.Put") || strings.Contains(line, "working.Prove") {
					continue
				}
				for _, m := range literal.FindAllStringSubmatch(line, -1) {
					found[m[1]] = p
				}
			}
		}
	}
	return found
}

// sentenceGroups are the beginnings of codes that are said as they stand.
var sentenceGroups = []string{"rule.", "symbol.", "reason.", "way.", "note.", "typed.", "json.", "job.", "desk.", "segment.", "head.", "limit.", "kept.",
	"caution.", "line.", "group.", "thing.", "row.", "leaf.", "offer.", "complaint.", "table.", "import.", "export.", "cutting.", "separator.", "hold.", "big.", "waiver.", "rounded.", "mark.", "outcome."}

func TestEveryCodeHasItsSentence(t *testing.T) {
	notSaid := map[string]bool{
		"typed.go": true, "job.json": true, "desk.file": true, "outcome.turns": true, // a code of its own answer, without a sentence
		"segment.mass": true, "segment.lineMass": true, "head.above": true, "head.saw": true, "head.sawAbovePlatform": true, "head.cut": true,
		"head.short": true, "head.pressed": true, "head.below": true, "head.buildUp": true, "head.expected": true, // names of steps
		"limit.reaction": true, "limit.gauge": true,
		"segment.neighbour": true, "segment.slack": true, "segment.step": true, "segment.joints": true, "segment.joint": true, "rig.efficiency.limit": true, // figures
	}
	checked := 0
	for code, where := range codes(t) {
		said := false
		for _, g := range sentenceGroups {
			said = said || strings.HasPrefix(code, g)
		}
		if !said || notSaid[code] || strings.HasSuffix(code, ".") {
			continue
		}
		checked++
		assert.True(t, words.Has(code), "%s has no sentence (%s)", code, where)
	}
	require.Greater(t, checked, 120)
}

// Words that certify are not used, and neither is "ton" alone.
func TestTheToolNeverCertifies(t *testing.T) {
	banned := regexp.MustCompile(`(?i)\b(certified|compliant|compliance|guarantee[ds]?|approved|seal|verified|safe to|tons?)\b`)
	for _, code := range words.Codes() {
		text := words.Say(code)
		if code == "unit.ton-US" || code == "unit.ton-UK" || strings.HasPrefix(code, "unit.tonf") {
			continue
		}
		assert.False(t, banned.MatchString(text), "%s: %s", code, text)
	}
}

func TestLabelsForThePage(t *testing.T) {
	for _, late := range []bool{false, true} {
		keys, texts := words.Labels(late)
		assert.NotEmpty(t, keys)
		for _, k := range keys {
			assert.NotEmpty(t, texts[k], k)
		}
	}
}

// codesIn lists what a pattern finds in the lines that are asked for of a
// package's code, its comments and tests left out.
func codesIn(t *testing.T, dir, pattern string, asked func(line string) bool) map[string]bool {
	t.Helper()
	paths, err := filepath.Glob("../" + dir + "/*.go")
	require.NoError(t, err)
	code, found := regexp.MustCompile(pattern), map[string]bool{}
	for _, p := range paths {
		if strings.HasSuffix(p, "_test.go") {
			continue
		}
		data, err := os.ReadFile(p)
		require.NoError(t, err)
		for _, line := range strings.Split(string(data), "\n") {
			if strings.HasPrefix(strings.TrimSpace(line), "//") || !asked(line) {
				continue
			}
			for _, m := range code.FindAllStringSubmatch(line, -1) {
				found[m[1]] = true
			}
		}
	}
	return found
}

// noRule says of a line that it names no rule and no basis.
func noRule(line string) bool {
	return !strings.Contains(line, "Key") && !strings.Contains(line, "Basis")
}
