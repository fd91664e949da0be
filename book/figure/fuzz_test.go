package figure_test

import (
	"encoding/binary"
	"errors"
	"math"
	"testing"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
)

// FuzzChart draws whatever it is given: either a typed error without a
// drawing, or a drawing that is as it must be, and is again the same.
func FuzzChart(f *testing.F) {
	numbers := func(x ...float64) []byte {
		var b []byte
		for _, x := range x {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
		}
		return b
	}
	f.Add("Title", "Description", "length", "ft", "a", 0.0, 60.0, 0.0, 12.0, false, false, 1, 3.0, numbers(0, 0, 60, 12))
	// Lines out at every edge, and back.
	f.Add("Title", "d", "x", "", "b", -1.0, 1.0, -1.0, 1.0, false, false, 2, 0.5,
		numbers(-2, 0, 0, 2, 2, 0, 0, -2, -2, 0, 0, 0, 0.5, 0.5, 1e9, -1e9))
	// Eight lines, logarithmic.
	f.Add("T", "d", "x", "s", "c", 0.1, 1e3, 1e-4, 1e7, true, true, 8, 1.0,
		numbers(1, 1, 2, 4, 3, 9, 4, 16, 1, 2, 1e3, 1e-4, 0.1, 1e7, 5, 5, 7, 7, 9, 1, 3, 4, 2, 2, 1, 5, 8, 8, 600, 3, 2, 9))
	// Numbers that must be refused.
	f.Add("<&>", "]]>", "\"", "'", "\x00", math.NaN(), math.Inf(1), 5e-324, math.MaxFloat64, true, false, 3, -1.0,
		numbers(math.NaN(), math.Inf(-1), 0, math.MaxFloat64, -math.MaxFloat64, 5e-324, 1, 1))
	// Axes that are nearly a point, and characters that are wide.
	f.Add("大きな図", "図", "長さ", "Ω", "線", 1e6, 1e6+100, -0.0005, 0.0005, false, false, 1, 0.0, numbers(1e6, 0, 1e6+1, 1e-9))
	f.Fuzz(func(t *testing.T, title, description, label, unit, name string, x0, x1, y0, y1 float64, xLog, yLog bool,
		lines int, limit float64, data []byte) {
		c := figure.Chart{
			Title: title, Description: description,
			X:      figure.Axis{Label: label, Unit: unit, Min: x0, Max: x1, Log: xLog},
			Y:      figure.Axis{Label: label, Unit: unit, Min: y0, Max: y1, Log: yLog},
			Limits: []figure.Limit{{Name: "limit", Y: limit}},
		}
		if math.IsNaN(limit) {
			c.Limits = nil
		}
		var points []figure.Point
		for ; len(data) >= 16; data = data[16:] {
			points = append(points, figure.Point{
				X: math.Float64frombits(binary.LittleEndian.Uint64(data)),
				Y: math.Float64frombits(binary.LittleEndian.Uint64(data[8:])),
			})
		}
		lines = min(max(lines, 0), 10)
		for i := range lines {
			l := figure.Line{Name: name + string(rune('a'+i))}
			l.Points = points[len(points)*i/lines : len(points)*(i+1)/lines]
			c.Lines = append(c.Lines, l)
		}
		svg, err := c.SVG()
		if err != nil {
			var bad *units.RangeError
			if !errors.As(err, &bad) || bad.Field == "" || bad.Allowed == nil || svg != nil {
				t.Fatalf("SVG() = %d bytes, error %#v, want none and a RangeError", len(svg), err)
			}
			return
		}
		checkDrawing(t, svg)
		for _, n := range curves(read(t, svg), len(c.Lines)) {
			drawn := 0
			for _, part := range n.parts(t) {
				drawn += len(part)
			}
			if drawn > figure.MaxPoints {
				t.Errorf("a line is drawn with %d points, want %d at most", drawn, figure.MaxPoints)
			}
		}
		if again, err := c.SVG(); err != nil || string(again) != string(svg) {
			t.Errorf("drawn again it differs, error %v", err)
		}
	})
}
