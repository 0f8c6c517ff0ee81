package job

import (
	"math/rand"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

var compiled = map[string]*regexp.Regexp{}

// takes says whether a schema of a text takes it.
func takes(t *testing.T, defs, schema *document.Node, text string) bool {
	if to := schema.Get("$ref").Text(); to != "" {
		return takes(t, defs, defs.Get(strings.TrimPrefix(to, "#/$defs/")), text)
	}
	if list := schema.Get("anyOf"); list != nil {
		for _, one := range list.Items() {
			if takes(t, defs, one, text) {
				return true
			}
		}
		return false
	}
	if list := schema.Get("enum"); list != nil {
		for _, one := range list.Items() {
			if one.Text() == text {
				return true
			}
		}
		return false
	}
	require.Equal(t, "string", schema.Get("type").Text(), schema.Compact())
	if p := schema.Get("pattern").Text(); p != "" {
		if compiled[p] == nil {
			compiled[p] = regexp.MustCompile(p)
		}
		return compiled[p].MatchString(text)
	}
	return true
}

// A text that the check takes is taken by the schema; and where the schema
// can say it, the other way round.
func TestSchemaAndCheckAgreeOnTexts(t *testing.T) {
	rnd := rand.New(rand.NewSource(11))
	w := &schemaWriter{defs: object()}
	pick := func(list ...string) string { return list[rnd.Intn(len(list))] }
	numbers := []string{"0", "-0", "0.0", "-0.00", "1", "-1", "0.5", "00.5", "12.60", "1e3", "1.", ".5", "+1", "1,5", "007", "180", "", "-", "0.0001", "10", "3.0"}
	units := []string{"", " ", " %", "%", " ton", " kN m"}
	for _, d := range []quantity.Dimension{quantity.Forces, quantity.Pressures, quantity.Lengths, quantity.Masses, quantity.Times, quantity.Areas, quantity.Moments, quantity.LineMasses} {
		for _, u := range quantity.Units(d) {
			units = append(units, " "+u.Symbol, u.Symbol)
		}
	}
	accepted, refused := map[Kind]int{}, map[Kind]int{}
	for i := range fields {
		f := &fields[i]
		if f.Kind == Lines || f.Kind == Words || f.Kind == Reference {
			continue
		}
		schema := w.field(f)
		own := units[:0:0]
		for _, u := range quantity.Units(f.Dim) {
			own = append(own, strings.TrimSuffix(" "+u.Symbol, " "))
		}
		for range 300 {
			var text string
			switch f.Kind {
			case Quantity:
				text = pick(numbers...) + pick(pick(units...), pick(own...))
			case Count:
				text = pick(numbers...)
			case Date:
				text = pick("2026", "0000", "1999", "26") + "-" + pick("01", "13", "00", "12", "2") + "-" + pick("01", "31", "32", "00", "9") + pick("", "", "T", " ")
			case Columns:
				text = pick("MPa", "bar", "reading=psi", "kN", "s") + pick(" ", "  ", "") + pick("kN", "MPa", "load=tf", "reference=bar", "still=yn", "")
			default:
				text = pick(append([]string{"", "other"}, f.Choices...)...)
			}
			if len(f.Other) > 0 && rnd.Intn(10) == 0 {
				text = pick(append([]string{"unknown"}, f.Other...)...)
			}
			problem := f.Problem(text)
			taken := takes(t, w.defs, schema, text)
			if problem == nil {
				accepted[f.Kind]++
				require.True(t, taken, "%s: %q is taken by the check and refused by %s", f.Pattern, text, schema.Compact())
				continue
			}
			refused[f.Kind]++
			if f.Kind == Quantity && problem.Code == "job.quantity" || f.Kind == Choice || f.Kind == Count && problem.Code == "job.count" {
				require.False(t, taken, "%s: %q is refused by the check and taken by %s", f.Pattern, text, schema.Compact())
			}
		}
	}
	for _, k := range []Kind{Quantity, Count, Date, Columns, Choice} {
		assert.Greater(t, accepted[k], 20, string(rune(k)))
		assert.Greater(t, refused[k], 20, string(rune(k)))
	}
}
