package battery

import "example.com/drawbar/units"

// A cellCount is what a voltage says about the cells of a battery.
type cellCount struct {
	usual []int // counts that batteries are made with, ascending
	// low and high bound the voltage of one cell that a label or a rested
	// battery shows. With the count given, tooLow and tooHigh do: what a cell
	// has from emptied under load to charged.
	low, high       units.Voltage
	tooLow, tooHigh units.Voltage
	words           allowed // what is allowed where the count is not given
}

// cellCounts returns the counts of the chemistry, which is checked. The counts
// are common practice. So are the bounds of a lead cell, which rests between
// 1.9 V and 2.15 V: one that shows more is being charged and says nothing of
// its nominal voltage. Those of lithium reach from 3 V, by which 4 cells are
// called 12 V, to above the 3.35 V of a full cell at rest.
func (c Chemistry) cellCounts() *cellCount {
	if c.IsLithium() {
		return &lithiumCells
	}
	return &leadCells
}

var (
	leadCells = cellCount{
		usual: []int{1, 2, 3, 4, 6, 12, 18, 24},
		low:   1.9 * units.Volt, high: 2.15 * units.Volt, tooLow: 1.7 * units.Volt, tooHigh: 2.45 * units.Volt,
		words: "1.9 V to 2.15 V for each of 1, 2, 3, 4, 6, 12, 18 or 24 cells; give Cells if there is another number of them",
	}
	lithiumCells = cellCount{
		usual: []int{1, 4, 8, 12, 15, 16},
		low:   3 * units.Volt, high: 3.4 * units.Volt, tooLow: 2.5 * units.Volt, tooHigh: 3.65 * units.Volt,
		words: "3 V to 3.4 V for each of 1, 4, 8, 12, 15 or 16 cells; give Cells if there is another number of them",
	}
)

// cells returns how many cells in series are in b: as given, or the usual
// number that brings the voltage of one nearest to the nominal one. other is a
// further usual number that the voltage allows, 0 if there is none. If n is 0
// no number fits. The chemistry is checked.
func (b Battery) cells() (n, other int) {
	if n, ok := b.Cells.Get(); ok {
		return n, 0
	}
	count, nominal := b.Chemistry.cellCounts(), b.Chemistry.figures().CellVoltage.Value
	best := units.Voltage(0) // how far from nominal the cells of n are
	for _, usual := range count.usual {
		each := units.Scale(b.Voltage, 1/units.Ratio(usual))
		if !units.Between(count.low, count.high).Contains(each) {
			continue
		}
		off := max(each-nominal, nominal-each)
		if n == 0 || units.Compare(off, best) < 0 {
			n, other, best = usual, n, off
		} else {
			other = usual
		}
	}
	return n, other
}

// checkCells refuses a number of cells that there is not, and a voltage that
// no number of cells makes: a chemistry or a voltage was mistaken for another.
func (b Battery) checkCells(op string) error {
	count := b.Chemistry.cellCounts()
	n, ok := b.Cells.Get()
	if !ok {
		if n, _ = b.cells(); n == 0 {
			return &units.RangeError{Op: op, Field: "Voltage", Value: b.Voltage, Allowed: count.words}
		}
		return nil
	}
	if n < 1 || n > 1000 {
		return &units.RangeError{Op: op, Field: "Cells", Value: n, Allowed: counts}
	}
	near := units.Between(units.Scale(count.tooLow, units.Ratio(n)), units.Scale(count.tooHigh, units.Ratio(n)))
	return near.Check(op, "Voltage", b.Voltage)
}
