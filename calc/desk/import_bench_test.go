package desk_test

import (
	"fmt"
	"strings"
	"testing"

	"gaugewright/calc/desk"
)

// schedule makes a table of piles as a spreadsheet would save it, all numbers
// different. It is made up and proves nothing but speed.
func schedule(rows int) string {
	var b strings.Builder
	b.WriteString("Mark;Pile type;Load [kN];Platform level [m];Founding level [m];Cut-off level [m];Easting [m];Northing [m]\r\n")
	for i := range rows {
		fmt.Fprintf(&b, "P%d;SQ 300;%d;12,6%d;-%d,%02d;11,%02d;%d,%d;%d,%d\r\n", i+1, 600+i%400, i%10, 4+i%20, i%100, i%100, 1000+i, i%1000+1000, 5000+i, i%1000+1000)
	}
	return b.String()
}

func benchmarkDesk(b *testing.B) *desk.Desk {
	d := desk.New()
	d.Call(`{"verb":"open","doc":"`+jobID+`","as":"new","ids":["`+jobID+`","`+pileID+`","`+critID+`"]}`, nil)
	d.Call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"s1"},"at":"1","do":"add","what":"type","ids":["t1"]}`, nil)
	d.Call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"s1"},"at":"1","do":"type","path":"/now/pileTypes/t1/name","typed":"SQ 300"}`, nil)
	return d
}

// 20,000 rows, previewed: the budget is 0.3 s.
func BenchmarkImportPreview(b *testing.B) {
	d, data := benchmarkDesk(b), []byte(schedule(20000))
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		answer, _ := d.Call(`{"verb":"show","doc":"`+jobID+`","view":"import","sign":","}`, data)
		if !strings.Contains(answer, `"new": 20000`) && !strings.Contains(answer, `"new":20000`) {
			b.Fatal(answer[:2000])
		}
	}
}
