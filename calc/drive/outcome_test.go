package drive_test

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"gaugewright/calc/drive"
	"gaugewright/calc/quantity"
)

func kPa(v quantity.Pressure) drive.Pressure { return drive.Pressure{V: v, Known: true} }

var blank drive.Pressure

// Cases by hand; no source: a comparison.
func TestPress(t *testing.T) {
	set, never := kPa(14500), kPa(17000)
	for what, c := range map[string]struct {
		readings []drive.Reading
		want     drive.Outcome
	}{
		"nothing read":                 {nil, drive.Outcome{}},
		"on the very division":         {[]drive.Reading{{Shown: kPa(14500), Set: set, Never: never}}, drive.Outcome{Reached: drive.Yes, Passed: drive.No}},
		"a division short":             {[]drive.Reading{{Shown: kPa(14000), Set: set, Never: never}}, drive.Outcome{Reached: drive.No, Passed: drive.No}},
		"on the limit is kept":         {[]drive.Reading{{Shown: kPa(17000), Set: set, Never: never}}, drive.Outcome{Reached: drive.Yes, Passed: drive.No}},
		"a division past":              {[]drive.Reading{{Shown: kPa(17500), Set: set, Never: never}}, drive.Outcome{Reached: drive.Yes, Passed: drive.Yes}},
		"a peak passes":                {[]drive.Reading{{Shown: kPa(16000), Peak: kPa(17500), Set: set, Never: never}}, drive.Outcome{Reached: drive.Yes, Passed: drive.Yes}},
		"a peak does not reach":        {[]drive.Reading{{Shown: kPa(14000), Peak: kPa(15000), Set: set, Never: never}}, drive.Outcome{Reached: drive.No, Passed: drive.No}},
		"a peak alone":                 {[]drive.Reading{{Peak: kPa(15000), Set: set, Never: never}}, drive.Outcome{Passed: drive.No}},
		"no set reading":               {[]drive.Reading{{Shown: kPa(14500), Never: never}}, drive.Outcome{Passed: drive.No}},
		"no never-exceed reading":      {[]drive.Reading{{Shown: kPa(14500), Set: set}}, drive.Outcome{Reached: drive.Yes}},
		"reached under another":        {[]drive.Reading{{Shown: kPa(9000)}, {Shown: kPa(14500), Set: set, Never: never}}, drive.Outcome{Reached: drive.Yes}},
		"perhaps under another":        {[]drive.Reading{{Shown: kPa(9000)}, {Shown: kPa(14000), Set: set, Never: never}}, drive.Outcome{}},
		"each by its own set-up":       {[]drive.Reading{{Shown: kPa(15000), Set: kPa(16000), Never: never}, {Shown: kPa(14000), Set: set, Never: kPa(13500)}}, drive.Outcome{Reached: drive.No, Passed: drive.Yes}},
		"a division that is no binary": {[]drive.Reading{{Shown: kPa(3 * 0.1 * 1000), Set: kPa(0.3 * 1000 * (1 + 1e-15)), Never: kPa(300)}}, drive.Outcome{Reached: drive.Yes, Passed: drive.No}},
	} {
		assert.Equal(t, c.want, drive.Press(c.readings), what)
	}
}

// readings are random ones under random set-ups; something of each may not be known.
func readings(rnd *rand.Rand) []drive.Reading {
	maybe := func(v float64) drive.Pressure {
		if rnd.Intn(5) == 0 {
			return blank
		}
		return kPa(quantity.Pressure(v))
	}
	list := make([]drive.Reading, rnd.Intn(6))
	for i := range list {
		list[i] = drive.Reading{Shown: maybe(500 * float64(rnd.Intn(40))), Peak: maybe(500 * float64(rnd.Intn(40))),
			Set: maybe(500 * float64(rnd.Intn(40))), Never: maybe(500 * float64(rnd.Intn(40)))}
	}
	return list
}

func TestLawsOfPress(t *testing.T) {
	rnd := rand.New(rand.NewSource(1))
	for range 20000 {
		list := readings(rnd)
		was := drive.Press(list)

		shuffled := slices.Clone(list)
		rnd.Shuffle(len(shuffled), func(a, b int) { shuffled[a], shuffled[b] = shuffled[b], shuffled[a] })
		assert.Equal(t, was, drive.Press(shuffled), "the order of readings does not matter")
		assert.Equal(t, was, drive.Press(append(slices.Clone(list), list...)), "nor does a reading written twice")

		more := drive.Press(append(slices.Clone(list), readings(rnd)...))
		assert.False(t, was.Reached == drive.Yes && more.Reached != drive.Yes, "what was reached stays reached")
		assert.False(t, was.Passed == drive.Yes && more.Passed != drive.Yes, "what was passed stays passed")

		if len(list) == 0 {
			continue
		}
		at := rnd.Intn(len(list))
		harder := slices.Clone(list)
		harder[at].Set.V += 500
		assert.False(t, was.Reached == drive.No && drive.Press(harder).Reached == drive.Yes, "a higher set reading is not reached sooner")
		stricter := slices.Clone(list)
		stricter[at].Never.V -= 500
		assert.False(t, was.Passed == drive.Yes && drive.Press(stricter).Passed != drive.Yes, "a lower never-exceed reading is passed sooner")
		unknown := slices.Clone(list)
		unknown[at].Set.Known, unknown[at].Never.Known = false, false
		now := drive.Press(unknown)
		assert.True(t, now.Reached == was.Reached || now.Reached == drive.NotKnown, "what is not known turns no answer over")
		assert.True(t, now.Passed == was.Passed || now.Passed == drive.NotKnown)
	}
}

// Of the readings under one set-up the highest tells all, which is what a job of
// thousands of piles is judged by.
func TestTheHighestReadingTellsAll(t *testing.T) {
	rnd := rand.New(rand.NewSource(2))
	for range 5000 {
		list := readings(rnd)
		var highest drive.Reading
		for i := range list {
			list[i].Set, list[i].Never = kPa(9000), kPa(12000)
			highest.Set, highest.Never = list[i].Set, list[i].Never
			for _, one := range []struct{ from, to *drive.Pressure }{{&list[i].Shown, &highest.Shown}, {&list[i].Peak, &highest.Peak}} {
				if one.from.Known && (!one.to.Known || one.from.V > one.to.V) {
					*one.to = *one.from
				}
			}
		}
		assert.Equal(t, drive.Press(list), drive.Press([]drive.Reading{highest}))
	}
}
