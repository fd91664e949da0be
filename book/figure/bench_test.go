package figure_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/drawbar/book/figure"
)

// BenchmarkSVG draws a chart that is as full as it may be, from lines that
// need no thinning and from lines that do.
func BenchmarkSVG(b *testing.B) {
	for _, n := range []int{2, 100, 10_000} {
		c := figure.Chart{
			Title: "Full chart", Description: "Eight waves.",
			X: figure.Axis{Label: "time", Unit: "h", Max: 24},
			Y: figure.Axis{Label: "power", Unit: "W", Min: -100, Max: 100},
		}
		for k := range 8 {
			c.Lines = append(c.Lines, line(fmt.Sprintf("load %d", k), 0, 24, n, func(x float64) float64 {
				return float64(10*k+30) * math.Sin(x/3+float64(k))
			}))
		}
		b.Run(fmt.Sprintf("lines=8/points=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.SVG(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
