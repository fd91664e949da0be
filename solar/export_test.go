package solar

import "example.com/drawbar/units"

// A ColdBand is a row of the table of cold factors as it stands in the code.
type ColdBand struct {
	Warm, Cold float64
	Factor     units.Ratio
}

// ColdBands returns the whole table.
func ColdBands() (bands []ColdBand) {
	for _, b := range coldBands {
		bands = append(bands, ColdBand{b.warm, b.cold, b.factor})
	}
	return bands
}
