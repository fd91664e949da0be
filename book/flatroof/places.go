package flatroof

import "example.com/drawbar/units"

// Mean irradiation of level ground in kWh/m² a day, January to December.
// Source: typical years TMY2 (Marion and Urban 1995), as a published climate
// statistics file has them; read.
type typicalYear [12]float64

// chicago is the file 94846, at 41.8° north.
func chicago() typicalYear {
	return typicalYear{1.764, 2.594, 3.55, 4.801, 5.976, 6.294, 6.377, 5.161, 4.193, 3.037, 1.829, 1.403}
}

// miami is the file 12839, at 25.8° north.
func miami() typicalYear {
	return typicalYear{3.494, 4.427, 5.157, 6.165, 6.029, 5.761, 5.993, 5.669, 4.915, 4.371, 3.568, 3.362}
}

// in returns the irradiation of a mean day of a month, 1 for January.
func (y typicalYear) in(month int) units.Irradiation {
	return units.Scale(units.KilowattHourPerSquareMetre, units.Ratio(y[month-1]))
}

// Greensboro, North Carolina, 36.1° north, per day: level ground over the year
// and in December, and a plane tilted by the latitude to the south over the
// year.
// Source: typical year TMY3 723170 (Wilcox and Marion 2008), averaged from its
// hours; the tilted plane by the sky model of Perez and others (1990); derived.
const (
	greensboroFlat     = 4.291 * units.KilowattHourPerSquareMetre
	greensboroDecember = 2.243 * units.KilowattHourPerSquareMetre
	greensboroTilted   = 4.864 * units.KilowattHourPerSquareMetre
)
