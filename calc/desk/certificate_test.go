package desk_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

const (
	certificate = "/now/certificates/z1"
	gauge       = "/now/gauges/" + gaugID
)

// certify adds a certificate of the circuit to the hand case and pastes points
// into it, on a day.
func (x table) certify(day, pasted string) *document.Node {
	x.call(`{"verb":"show","doc":"`+jobID+`","view":"info","day":"`+day+`"}`, nil)
	ok := func(a *document.Node) {
		require.True(x.t, a.Get("ok").Bool(), a.Compact())
		require.Nil(x.t, a.Get("problem"), a.Compact())
	}
	ok(x.enter("add", `"what":"certificate","path":`+quote(circuit)+`,"ids":["z1"]`))
	for _, e := range [][2]string{{"number", "K-118"}, {"on", "2026-05-20"}, {"validMonths", "6"}, {"referenceUncertainty", "0.5 %"}, {"coverage", "2"}} {
		ok(x.typed(certificate+"/"+e[0], e[1]))
	}
	for _, e := range [][2]string{{"ram", "active"}, {"run", "rising"}, {"set", "reading"}, {"onHeadIncluded", "yes"}, {"fit", "line"}} {
		ok(x.enter("choose", `"path":`+quote(certificate+"/"+e[0])+`,"value":`+quote(e[1])))
	}
	return x.typed(certificate+"/points", pasted)
}

// pasted is what a spreadsheet gives: a heading with units, tabs.
const pasted = "Reading (MPa)\tLoad (kN)\r\n2.0\t243.1\r\n4.0\t479.2\r\n6.0\t722.4\r\n8.0\t958.8\r\n10.0\t1202.6\r\n12.0\t1438.9\r\n14.0\t1683.1\r\n16.0\t1918.8\r\n18.0\t2162.7\r\n20.0\t2399.4\r\n"

// From a pasted certificate to a guarded window. The exact figures are those of
// the hand case of package assess.
func TestFromACertificateToAGuardedWindow(t *testing.T) {
	x := newTable(t)
	x.fill()
	a := x.certify("2026-11-11", pasted)
	require.True(t, a.Get("ok").Bool(), a.Compact())
	require.Nil(t, a.Get("problem"), a.Compact())
	v := x.show("sizing", "")
	assert.Equal(t, "open", v.Get("state").Text(), v.Compact())
	assert.Equal(t, "1800.7", v.At("/loadAtSet/says").Text())
	assert.Equal(t, document.Null, v.Get("efficiency").Kind(), "nothing is not calibrated")
	assert.Equal(t, "Uncertainty not known yet, certificate K-118, 9 days left", v.At("/doubt/says").Text())

	doubt := x.show("doubt", `,"of":"`+pileID+`"`)
	assert.Contains(t, doubt.At("/lead/0").Text(), "error of zero", doubt.Compact())
	for _, e := range [][2]string{{gauge + "/celsius", "30"}, {gauge + "/zeroError", "0.1 MPa"}} {
		require.True(t, x.typed(e[0], e[1]).Get("ok").Bool())
	}
	v = x.show("sizing", "")
	// By hand, in kN at 15 MPa with 119.95 kN a MPa: temperature 119.95 x 0.16/sqrt 3 = 11.1, zero 6.9, half a
	// division 17.3, reference 1800.7 x 0.25 % = 4.5, fit about 2.2; the root of the sum of squares is 22.3, U = 44.
	assert.Equal(t, "± 44 kN at 95 %, certificate K-118, 9 days left", v.At("/doubt/says").Text(), "the class is not asked for: the gauge was calibrated with the jacks")

	require.True(t, x.enter("choose", `"path":"/now/guard","value":"yes"`).Get("ok").Bool())
	v = x.show("sizing", "")
	assert.Equal(t, "open", v.Get("state").Text(), v.Compact())
	// 17.5 MPa: 2100.6 + 44 keep the pile's 2,200 kN, 18.0 MPa: 2160.5 + 44 do not.
	assert.Equal(t, []string{"15.5", "17.5"}, []string{v.At("/set/says").Text(), v.At("/never/says").Text()})

	// The day goes on: the certificate ends, and with it the reading.
	a, _ = x.call(`{"verb":"show","doc":"`+jobID+`","view":"sizing","day":"2026-11-21"}`, nil)
	assert.Equal(t, "refused", a.Get("state").Text())
	assert.Contains(t, a.Get("big").Text(), "Certificate K-118 ended on 2026-11-20")
	assert.Equal(t, document.Null, a.Get("set").Kind())

	// A file brings all of it.
	saved := x.save()
	for _, part := range []string{`"columns": "MPa kN"`, `"2.0 243.1"`, `"loadBy": "certificate"`} {
		assert.Contains(t, saved, part)
	}
}

// Points as people type and paste them, and what is refused: the text stays in
// its box, and nothing is computed with what stood there before.
func TestPointsTypedAndPasted(t *testing.T) {
	for text, first := range map[string]string{
		"MPa kN\n2.0 243.1\n4.0 479.2\n6.0 722.4":         "2.0 243.1",
		"bar kN\r\n20 243.1\r\n40 479.2\r\n60 722.4\r\n":  "20 243.1",
		"MPa;kN\n2,5;243,1\n4,5;479,2\n\n6,5;722,4\n":     "2.5 243.1",
		"Pressure [MPa], Load [kN]\n2.0,243.1\n4.0,479.2": "2.0 243.1",
		"MPa | tf\n2.0 | 24.31\n4.0 | 47.92":              "2.0 24.31",
	} {
		x := newTable(t)
		x.fill()
		a := x.certify("2026-11-11", text)
		require.Nil(t, a.Get("problem"), "%s: %s", text, a.Compact())
		field := x.show("form", `,"path":`+quote(certificate))
		assert.Contains(t, field.Compact(), "points", text)
		assert.Contains(t, x.save(), quote(first), text)
	}
	for text, code := range map[string]string{
		"MPa kN\n2.0 243.1\n4.0":         "typed.pointLine",
		"MPa kN\n2.0 243.1 1\n4.0 479.2": "typed.pointLine",
		"MPa kN\n2.0 x\n4.0 479.2":       "typed.inLine",
		"MPa kN\n2.0 1,243\n4.0 2,479":   "typed.inLine",
		"MPa kN\n2.0 243.1kg\n4.0 479":   "typed.inLine",
		"MPa kN\n2000 243\n4000 479":     "typed.pointsFit",
		"kN MPa\n243 2.0\n479 4.0":       "typed.columns",
		"MPa kN\n-2.0 243\n4.0 479":      "typed.pointsFit",
	} {
		x := newTable(t)
		x.fill()
		require.Nil(t, x.certify("2026-11-11", pasted).Get("problem"))
		a := x.typed(certificate+"/points", text)
		require.True(t, a.Get("ok").Bool(), text)
		require.NotNil(t, a.Get("problem"), text)
		assert.Equal(t, code, a.At("/problem/code").Text(), text)
		assert.NotContains(t, a.At("/problem/says").Text(), "{")
		form := x.show("form", `,"path":`+quote(certificate)).Compact()
		assert.Contains(t, form, strings.Trim(quote(text), `"`), "what was typed stays in its box")
		assert.NotEqual(t, "open", x.show("sizing", "").Get("state").Text(), text)
	}

	x := newTable(t)
	x.fill()
	assert.Equal(t, "typed.columns", x.certify("2026-11-11", "2.0 243.1\n4.0 479.2").At("/problem/code").Text())
	// Asked once what the comma means, the points are read again by themselves.
	x = newTable(t)
	x.fill()
	x.certify("2026-11-11", "MPa kN\n2,000 1243\n4,000 2479\n6,000 3722")
	require.True(t, x.enter("sign", `"sign":","`).Get("ok").Bool())
	assert.Contains(t, x.save(), `"2.000 1243"`)
	// Units under which the points do not fit are refused: the file could not be opened again.
	x = newTable(t)
	x.fill()
	x.certify("2026-11-11", "kPa kN\n2000 243.1\n4000 479.2\n6000 722.4")
	a := x.typed(certificate+"/columns", "MPa kN")
	assert.Equal(t, "typed.pointsFit", a.At("/problem/code").Text(), a.Compact())
}

// Every number of the sheets of a certificate, of the doubt and of a gauge opens.
func TestEveryNumberAboutAGaugeOpens(t *testing.T) {
	x := newTable(t)
	x.fill()
	x.certify("2026-11-11", pasted)
	for _, e := range [][2]string{{gauge + "/celsius", "30"}, {gauge + "/zeroError", "0.1 MPa"}, {gauge + "/class", "1.0 %"}, {certificate + "/falling", "20.0 2400\n10.0 1210\n2.0 250"}} {
		a := x.typed(e[0], e[1])
		require.Nil(t, a.Get("problem"), a.Compact())
	}
	x.enter("add", `"what":"gauge","ids":["g2"]`)
	for _, e := range [][2]string{{"serial", "PG-9"}, {"fullScale", "40 MPa"}, {"division", "0.5 MPa"}, {"class", "1.0 %"}, {"zeroError", "0.1 MPa"}} {
		x.typed("/now/gauges/g2/"+e[0], e[1])
	}
	require.True(t, x.enter("zero", `"gauge":"`+gaugID+`","typed":"-0.1","name":"M. Vaar","ids":["r1"]`).Get("ok").Bool())
	require.True(t, x.enter("compareGauges", `"gauge":"`+gaugID+`","other":"g2","typed":"15.0","typedOther":"15.5","ids":["r2"]`).Get("ok").Bool())
	opened := 0
	open := func(view, of string) string {
		v := x.show(view, `,"of":"`+of+`"`)
		require.True(t, v.Get("ok").Bool(), v.Compact())
		for _, g := range v.Get("groups").Items() {
			for _, l := range g.Get("lines").Items() {
				if ref := l.At("/value/open").Text(); ref != "" {
					w := x.show("working", `,"step":`+quote(ref))
					assert.True(t, w.Get("ok").Bool(), "%s %s: %s", view, ref, w.Compact())
					opened++
				}
			}
		}
		return v.Compact()
	}
	sheet := open("certificate", "z1")
	assert.Contains(t, sheet, "0.955", "slope over area: 119.9467 kN/MPa over 125.664 kN/MPa")
	doubt := open("doubt", pileID)
	for _, term := range []string{"Temperature of the gauge", "Fit of the certificate", "Reference of the certificate", "Half a division"} {
		assert.Contains(t, doubt, term)
	}
	assert.NotContains(t, doubt, "Class of the gauge")
	checks := open("gauge", gaugID)
	assert.Contains(t, checks, "within the stated error of zero")
	assert.Contains(t, checks, "a shift has two")
	assert.Contains(t, checks, "They agree")
	assert.Greater(t, opened, 25)

	// By hand: U = 1.96 sqrt((0.4^2 + 0.25^2 + 0.1^2)/3) = 0.5457 MPa each, E = 0.5/(0.5457 sqrt 2) = 0.65.
	assert.Contains(t, checks, `"says":"0.65"`)
	require.True(t, x.enter("compareGauges", `"gauge":"`+gaugID+`","other":"g2","typed":"15.0","typedOther":"16.0","ids":["r3"]`).Get("ok").Bool())
	assert.Contains(t, open("gauge", gaugID), "stop, and find out")
}

func TestChecksThatAreNotTaken(t *testing.T) {
	x := newTable(t)
	x.fill()
	for body, code := range map[string]string{
		`"gauge":"nowhere","typed":"0","ids":["r"]`:             "desk.missing",
		`"gauge":"` + gaugID + `","typed":"","ids":["r"]`:       "zero.blank",
		`"gauge":"` + gaugID + `","typed":"15","ids":["r"]`:     "zero.far",
		`"gauge":"` + gaugID + `","typed":"0.1 kN","ids":["r"]`: "typed.dimension",
		`"gauge":"` + gaugID + `","typed":"0.1"`:                "desk.ids",
	} {
		a := x.enter("zero", body)
		assert.Equal(t, code, a.Get("code").Text(), "%s: %s", body, a.Compact())
	}
	a := x.enter("compareGauges", `"gauge":"`+gaugID+`","other":"`+gaugID+`","typed":"1","typedOther":"1","ids":["r"]`)
	assert.Equal(t, "compareGauges.other", a.Get("code").Text())
}
