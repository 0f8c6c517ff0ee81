package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/pile"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// Whatever an input of a pile may be refused with has a sentence, and every
// limit a name.
func TestPilesAreWorded(t *testing.T) {
	found := codesIn(t, "pile", `"(pile\.[A-Za-z]+)"`, noRule)
	require.GreaterOrEqual(t, len(found), 18)
	for c := range found {
		assert.True(t, words.Has(c), "%s has no sentence", c)
	}
	for _, key := range pile.LimitKeys {
		assert.True(t, words.Has("symbol.pileLimit."+key), key)
	}

	var e *pile.InputError
	_, err := pile.Ring(0.5, 0.26)
	require.ErrorAs(t, err, &e)
	assert.Equal(t, "The wall, t = 0.26 m, is more than half the outer diameter: at most 0.25 m. Example: 0.0125 m.", words.Say(e.Code, e.Args(quantity.Point)...))
}
