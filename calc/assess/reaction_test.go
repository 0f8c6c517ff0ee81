package assess_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/window"
)

// placed is the rig of the hand calculation in package rig: 180 t and 40 t,
// feet 3.1 m from the middle, weight at +0.15 m, pile at +0.80 m: the foot near
// the pile allows 1618.1 kN, the far one 2490.5 kN.
var placed = []string{"/rigs/r/mass", "180 t", "/rigs/r/ballast", "40 t", "/rigs/r/halfSpacing", "3.10 m", "/rigs/r/massCentre", "0.15 m",
	"/rigs/r/circuits/c/at", "0.80 m"}

func more(base []string, values ...string) []string {
	return append(append([]string(nil), base...), values...)
}

func TestAPileOffTheCentreUnloadsTheNearFoot(t *testing.T) {
	a := answer(t, with(t, placed...))
	l := limitOf(a, window.Reaction)
	require.Equal(t, window.Entered, l.State)
	assert.Equal(t, "1618.1 kN", l.Value.Text(quantity.Point))
	require.Len(t, l.Parts, 2)
	assert.True(t, l.Parts[0].Least)
	assert.Equal(t, "2490.5 kN", l.Parts[1].Value.Text(quantity.Point))
	assert.Equal(t, assess.Closed, a.State)
	assert.Equal(t, "way.piecesUnknown", a.Ways[0].Code, "nobody knows where more ballast would stand")

	for _, missing := range []string{"/rigs/r/halfSpacing", "/rigs/r/massCentre", "/rigs/r/circuits/c/at"} {
		l := limitOf(answer(t, with(t, more(placed, missing, "")...)), window.Reaction)
		assert.Equal(t, window.Missing, l.State, missing)
		assert.Len(t, l.Needs, 1)
	}
	l = limitOf(answer(t, with(t, more(placed, "/rigs/r/massCentre", "3.40 m")...)), window.Reaction)
	require.NotNil(t, l.Problem)
	assert.Equal(t, "rig.placeProblem", l.Problem.Code)
}

func TestBallastInWholePiecesAtItsPlaceOpensTheWindow(t *testing.T) {
	pieces := more(placed, "/rigs/r/pieces/k/name", "slab", "/rigs/r/pieces/k/mass", "5.0 t", "/rigs/r/pieces/k/count", "24", "/rigs/r/pieces/k/at", "1.20 m")
	a := answer(t, with(t, pieces...))
	require.Equal(t, "way.reactionPieces", a.Ways[0].Code, "%v", a.Ways)
	n, err := strconv.Atoi(a.Ways[0].Args[1])
	require.NoError(t, err)
	open := func(n int) bool {
		ballast := 40 + 5*float64(n)
		centre := (220*0.15 + 5*float64(n)*1.20) / (180 + ballast)
		return answer(t, with(t, more(pieces, "/rigs/r/ballast", strconv.FormatFloat(ballast, 'f', 1, 64)+" t",
			"/rigs/r/massCentre", strconv.FormatFloat(centre, 'f', 6, 64)+" m")...)).State == assess.Open
	}
	assert.True(t, open(n), "what is said to open the window does")
	assert.False(t, open(n-1), "and one piece less does not")

	assert.Equal(t, "way.noPieces", answer(t, with(t, more(pieces, "/rigs/r/pieces/k/at", "-3.50 m")...)).Ways[0].Code)
	assert.Equal(t, "way.noPieces", answer(t, with(t, more(pieces, "/rigs/r/pieces/k/count", "1")...)).Ways[0].Code)
	assert.Equal(t, "way.ballastMost", answer(t, with(t, more(pieces, "/rigs/r/ballastMost", "45 t")...)).Ways[0].Code)
}

// Under the centre of mass nothing hangs on the place of a piece: what lacks of
// nine tenths of the weight, over 0.9 g, in whole pieces.
func TestBallastInWholePiecesUnderTheCentreOfMass(t *testing.T) {
	heavy := []string{"/rigs/r/mass", "180 t", "/piles/p/workingLoad", "1000 kN", "/rigs/r/circuits/c/efficiency/low", "0.95", "/pileTypes/t/pressingLimit", "2400 kN",
		"/rigs/r/pieces/k/name", "slab", "/rigs/r/pieces/k/mass", "5.0 t"}
	a := answer(t, with(t, heavy...))
	require.Equal(t, "way.reactionPiecesCentred", a.Ways[0].Code, "%v %v %v", a.State, a.Reasons, a.Ways)
	n, err := strconv.Atoi(a.Ways[0].Args[1])
	require.NoError(t, err)
	needed := (a.Most.V - limitOf(a, window.Reaction).Value.V) / (0.9 * quantity.Gravity)
	assert.GreaterOrEqual(t, 5*float64(n), needed)
	assert.Less(t, 5*float64(n-1), needed)
	other := more(heavy, "/rigs/r/pieces/j/name", "block", "/rigs/r/pieces/j/mass", strconv.FormatFloat(needed, 'f', 1, 64)+"9 t")
	assert.Equal(t, []string{"1", "block"}, answer(t, with(t, other...)).Ways[0].Args[1:], "the least ballast of the kinds that are there")
	assert.Equal(t, "way.noPieces", answer(t, with(t, more(heavy, "/rigs/r/pieces/k/count", strconv.Itoa(n-1))...)).Ways[0].Code)
}

// The far foot governs: 200 t at +0.5 m, feet at 3 m, pile in the middle: 0.9 x
// 1961.3 x 2.5/3 = 1471.0 kN. For 1,618 kN, ballast at -2 m must carry (1618/0.9 x
// 3 - 1961.33 x 2.5)/(9.80665 x 5) = 10.0 t: worked by hand from moments about the
// near foot.
func TestBallastForTheFarFoot(t *testing.T) {
	far := []string{"/rigs/r/mass", "200 t", "/rigs/r/halfSpacing", "3.0 m", "/rigs/r/massCentre", "0.50 m", "/rigs/r/circuits/c/at", "0 m",
		"/piles/p/workingLoad", "745 kN", "/rigs/r/circuits/c/efficiency/low", "0.95", "/rigs/r/pieces/k/mass", "5.0 t", "/rigs/r/pieces/k/at", "-2.0 m"}
	a := answer(t, with(t, far...))
	require.Equal(t, "1471.0 kN", limitOf(a, window.Reaction).Value.Text(quantity.Point))
	require.Equal(t, "way.reactionPieces", a.Ways[0].Code, "%v %v", a.State, a.Ways)
	n := int(a.Ways[0].Args[1][0] - '0')
	most := a.Most.V
	needed := (most/0.9*3 - 200*quantity.Gravity*2.5) / (quantity.Gravity * 5)
	assert.GreaterOrEqual(t, float64(n)*5, needed)
	assert.Less(t, float64(n-1)*5, needed)
}

func TestSideAndCornerHaveLimitsOfTheirOwn(t *testing.T) {
	side := []string{"/rigs/r/circuits/c/place", "side"}
	l := limitOf(answer(t, with(t, side...)), window.Reaction)
	assert.Equal(t, []string{"field.rigs.sideLimit"}, l.Needs)
	a := answer(t, with(t, more(side, "/rigs/r/sideLimit", "1500 kN")...))
	assert.Equal(t, "1500.0 kN", limitOf(a, window.Reaction).Value.Text(quantity.Point))
	assert.Equal(t, []assess.Note{{Code: "way.place"}}, a.Ways, "no ballast is offered where the rig itself is the limit")
}

// 0.35 x 4 x 1600 = 2240 kN; with mu = 0.25 it is 1600 kN.
func TestTheGripCountsWhereItIsEntered(t *testing.T) {
	grip := []string{"/rigs/r/grip/mu", "0.35", "/rigs/r/grip/faces", "4", "/rigs/r/grip/force", "1600 kN"}
	a := answer(t, with(t, grip...))
	assert.Equal(t, "2240.0 kN", limitOf(a, window.Grip).Value.Text(quantity.Point))
	assert.Equal(t, assess.Open, a.State)
	a = answer(t, with(t, more(grip, "/rigs/r/grip/mu", "0.25")...))
	assert.Equal(t, assess.Closed, a.State)
	assert.Equal(t, "way.grip", a.Ways[0].Code)
	hollow := more(grip, "/pileTypes/t/shape", "spun", "/pileTypes/t/width", "400 mm", "/pileTypes/t/wall", "75 mm")
	assert.Equal(t, []string{"field.pileTypes.gripLimit"}, limitOf(answer(t, with(t, hollow...)), window.Grip).Needs)
	assert.Equal(t, "rig.gripAbove", limitOf(answer(t, with(t, more(hollow, "/pileTypes/t/gripLimit", "1200 kN")...)), window.Grip).Problem.Code)
	face := more(grip, "/rigs/r/grip/width", "280 mm", "/rigs/r/grip/height", "600 mm", "/rigs/r/grip/facePressure")
	assert.Equal(t, "rig.faceAbove", limitOf(answer(t, with(t, append(face, "9 MPa")...)), window.Grip).Problem.Code)
	assert.Nil(t, limitOf(answer(t, with(t, append(face, "10 MPa")...)), window.Grip).Problem)
}

// The feet of package rig: 9.6 x 1.4 m, body travel 2.4 m. By hand with 2157.463 kN
// at +0.15 m: the heavier line carries 2157.463 x 3.25/6.2 = 1130.928 kN; walking,
// 1.2 m along the travel is within a sixth of 9.6 m: 1130.928/13.44 x (1 + 6 x
// 1.2/9.6) = 147.3 kPa; standing still 84.1 kPa.
func TestGroundUnderTheFeet(t *testing.T) {
	feet := more(placed, "/rigs/r/feet/long/number", "2", "/rigs/r/feet/long/length", "9.60 m", "/rigs/r/feet/long/width", "1.40 m",
		"/rigs/r/feet/short/number", "2", "/rigs/r/feet/short/length", "3.20 m", "/rigs/r/feet/short/width", "1.10 m", "/rigs/r/bodyTravel", "2.40 m",
		"/rigs/r/bearing/travelling", "150 kPa", "/rigs/r/bearing/pressing", "150 kPa", "/rigs/r/bearing/suddenLoss", "180 kPa", "/piles/p/workingLoad", "700 kN")
	a := answer(t, with(t, feet...))
	require.Empty(t, a.GroundNeeds)
	require.Equal(t, assess.Open, a.State, "%v", a.Reasons)
	require.Len(t, a.Ground, 4)
	assert.Equal(t, "147 kPa", a.Ground[0].Pressure.Text(quantity.Point))
	assert.Equal(t, "98 %", a.Ground[0].Use.Text(quantity.Point))
	assert.Equal(t, "pressing", a.Ground[2].Case)
	assert.Equal(t, "84 kPa", a.Ground[3].Pressure.Text(quantity.Point))
	assert.True(t, a.Ground[1].Largest, "the short feet press hardest")

	tips := answer(t, with(t, more(feet, "/rigs/r/feet/short/length", "2.40 m")...))
	assert.Equal(t, "ground.offFeet", tips.Ground[1].Problem.Code)
	assert.Equal(t, "ground.evenFeet", answer(t, with(t, more(feet, "/rigs/r/feet/long/number", "3")...)).Ground[0].Problem.Code)
	for _, path := range []string{"/rigs/r/feet/long/number", "/rigs/r/bodyTravel", "/rigs/r/massCentre"} {
		assert.NotEmpty(t, answer(t, with(t, more(feet, path, "")...)).GroundNeeds, path)
	}
}

// reactionTrees hands these jobs on to the tests of the working.
func reactionTrees(t *testing.T, into map[string]*document.Node) {
	pieces := []string{"/rigs/r/pieces/k/mass", "5.0 t", "/rigs/r/pieces/k/at", "1.20 m"}
	into["off the centre"] = with(t, more(placed, pieces...)...)
	into["off the centre, weight beside the mass"] = with(t, more(placed, more(pieces, "/rigs/r/circuits/c/onHeadInMass", "no")...)...)
	into["on its feet"] = with(t, more(placed, strings.Split("/rigs/r/feet/long/number|2|/rigs/r/feet/long/length|9.60 m|/rigs/r/feet/long/width|1.40 m|/rigs/r/feet/short/number|2|/rigs/r/feet/short/length|3.20 m|/rigs/r/feet/short/width|1.10 m|/rigs/r/bodyTravel|2.40 m|/rigs/r/bearing/travelling|150 kPa|/piles/p/workingLoad|700 kN|/rigs/r/circuits/c/onHeadInMass|no", "|")...)...)
	into["side"] = with(t, more(placed, "/rigs/r/circuits/c/place", "side", "/rigs/r/sideLimit", "1500 kN")...)
	into["return pressure"] = with(t, "/rigs/r/circuits/c/groups/0/rod", "140 mm", "/rigs/r/circuits/c/returnPressure", "0.4 MPa")
	into["grip"] = with(t, strings.Split("/rigs/r/grip/mu|0.35|/rigs/r/grip/faces|4|/rigs/r/grip/force|1600 kN|/rigs/r/grip/width|280 mm|/rigs/r/grip/height|600 mm|/rigs/r/grip/facePressure|12 MPa", "|")...)
}
