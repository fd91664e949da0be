package wire

import "example.com/drawbar/units"

// An IECCell is one number of the table of IEC 60228 as it stands in the code.
type IECCell struct {
	Size   Size
	Strand Strand
	At20   units.ResistancePerLength
}

// IECCells returns the whole table.
func IECCells() (cells []IECCell) {
	for _, size := range MetricSizes() {
		for _, strand := range []Strand{Stranded, Flexible} {
			cells = append(cells, IECCell{size, strand, iecResistance(size, strand)})
		}
	}
	return cells
}
