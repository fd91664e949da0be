package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// TestIEC60228Falls: a larger conductor has less resistance, in each class, and
// fine strands have more than coarse ones but at 50 mm², as the standard prints.
func TestIEC60228Falls(t *testing.T) {
	var lastCoarse, lastFine units.ResistancePerLength
	for i, size := range wire.MetricSizes() {
		coarse, fine := wire.IECResistance(size, wire.Stranded, false), wire.IECResistance(size, wire.Flexible, false)
		if i > 0 && (coarse >= lastCoarse || fine >= lastFine) {
			t.Errorf("%v: %v and %v are not below %v and %v of the size before", size, coarse, fine, lastCoarse, lastFine)
		}
		if odd := size == wire.Metric(50*units.SquareMillimetre); (fine < coarse) != odd {
			t.Errorf("%v: flexible %v against stranded %v", size, fine, coarse)
		}
		lastCoarse, lastFine = coarse, fine
	}
}
