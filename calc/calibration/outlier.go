package calibration

import (
	"math"

	"gaugewright/calc/basis"
)

// OutlierLevel is the id of the figure for the chance that points without any
// outlier show one, all points together.
const OutlierLevel = "calibration.outlierLevel"

// Deviation says how far a point stands from the curve through all others.
type Deviation struct {
	T       float64 // residual from the curve without the point, over its standard deviation
	Outlier bool
}

// Outliers compares each point with the curve through all others,
//
//	t_i = e_i/(s_i sqrt(1 - h_i)),  s_i^2 = (SSE - e_i^2/(1 - h_i))/(nu - 1)
//
// and flags it where |t_i| is above limit, the quantile of Student's t with nu -
// 1 degrees of freedom that [OutlierLevel] shared out among n points on two
// sides gives. Nothing is dropped: a flag is a question to the laboratory. ok is
// false where nu < 2; a residual of rounding alone (1e-9 of the largest
// observed value) is never flagged, and neither is a point without which there
// is no curve.
//
// Source: the outlier test with externally studentised residuals and
// Bonferroni's bound, S. Weisberg, Applied Linear Regression, chapter on
// outliers (from memory). It sees one outlier well, two near each other less so.
func (c Curve) Outliers() (list []Deviation, limit float64, ok bool) {
	if c.DF < 2 {
		return nil, 0, false
	}
	n, largest := float64(len(c.Points)), 0.0
	for _, p := range c.Points {
		largest = math.Max(largest, math.Abs(p.Y))
	}
	limit = Coverage(1-basis.Figure(OutlierLevel)/n, float64(c.DF-1))
	for i, e := range c.Residuals {
		left := 1 - c.Lever(c.Points[i].X)
		if left < 1e-9 || math.Abs(e) <= 1e-9*largest {
			list = append(list, Deviation{})
			continue
		}
		without := math.Max(0, c.SSE-float64(e*e)/left) / float64(c.DF-1)
		t := e / math.Sqrt(without*left)
		list = append(list, Deviation{T: t, Outlier: math.Abs(t) > limit})
	}
	return list, limit, true
}
