package solar

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Standard test conditions of panels.
// Source: IEC 60904-3 and IEC 61215, from memory.
const testIrradiance = 1000 * units.WattPerSquareMetre

// testCell is the cell temperature of the standard test conditions.
var testCell = units.Celsius(25)

var (
	testConditions = working.Source{Body: "IEC", Title: "60904-3 and 61215, standard test conditions",
		Place: "1000 W/m² and 25 °C", Provenance: working.Memory}
	dobosPower = working.Source{Body: "NREL", Title: "TP-6A20-62641 (Dobos)", Edition: "2014",
		Place: "direct-current power, as an open-source modelling library has it", Provenance: working.Read}
)

// A PanelDay is panels that all lie alike, and the sun of a day on them.
type PanelDay struct {
	Peak units.Power // nameplate power of all panels at standard test conditions, > 0
	// Irradiation is the day's, in the plane of the panels: for panels flat on
	// the roof the global horizontal irradiation of the place and month, not
	// the figure of a sun-hour map, which is for a tilted rack. 0 to 15 kWh/m²,
	// which is more than level ground gets above the air on any day anywhere.
	Irradiation units.Irradiation
	// PowerCoefficient is the panels' γ: how their power changes for each
	// kelvin, −1 %/K to 0 %/K. It counts only together with CellTemperature.
	PowerCoefficient units.Opt[units.PerKelvin]
	// CellTemperature is that of the cells, the mean over the day weighted by
	// the irradiance, −60 °C to 120 °C; see [CellTemperature]. It counts only
	// together with PowerCoefficient.
	CellTemperature units.Temperature
	Losses          Losses // what is lost besides
}

// A DayHarvest is the result of [DailyHarvest].
type DayHarvest struct {
	Day               PanelDay      // as used
	PeakHours         units.Elapsed // hours of 1000 W/m² that make up the irradiation
	Nameplate         units.Energy  // the day's at nameplate power, cells at 25 °C, nothing lost
	TemperatureFactor units.Ratio   // for the temperature of the cells; 1 if it is not counted
	Kept              units.Ratio   // what the losses leave
	Energy            units.Energy  // the day's, for a bank that can take it
}

// DailyHarvest returns the direct-current energy that panels give in a day:
//
//	t = H / (1000 W/m²)
//	E = P · t · (1 + γ (T_c − 25 °C)) · Π(1 − L_i)
//
// The panels are taken as proportional to the irradiance; what low sun and
// reflection take belongs in the losses. Without PowerCoefficient or
// CellTemperature the factor for temperature is 1, and Findings says so.
//
// A field outside the range that [PanelDay] states, or not finite, gives a
// [*units.RangeError] and the zero DayHarvest; so does an energy that no
// float64 holds.
func DailyHarvest(d PanelDay) (DayHarvest, error) {
	const op = "solar.DailyHarvest"
	if err := d.check(op); err != nil {
		return DayHarvest{}, err
	}
	h := DayHarvest{Day: d, TemperatureFactor: 1, Kept: d.Losses.Kept()}
	h.PeakHours = units.Scale(units.Hour, units.RatioOf(d.Irradiation, testIrradiance.For(units.Hour)))
	h.Nameplate = d.Peak.For(h.PeakHours)
	if gamma, ok := d.PowerCoefficient.Get(); ok && d.CellTemperature.IsSet() {
		h.TemperatureFactor = 1 + gamma.Over(d.CellTemperature.Sub(testCell))
	}
	h.Energy = units.Scale(h.Nameplate, h.TemperatureFactor*h.Kept)
	if err := units.AtLeast[units.Energy](0).Check(op, "Energy", h.Energy); err != nil {
		return DayHarvest{}, err
	}
	return h, nil
}

func (d PanelDay) check(op string) error {
	if err := units.Above[units.Power](0).Check(op, "Peak", d.Peak); err != nil {
		return err
	}
	days := units.Between(0, 15*units.KilowattHourPerSquareMetre)
	if err := days.Check(op, "Irradiation", d.Irradiation); err != nil {
		return err
	}
	if gamma, ok := d.PowerCoefficient.Get(); ok {
		if err := units.Between(-1*units.PercentPerKelvin, 0).Check(op, "PowerCoefficient", gamma); err != nil {
			return err
		}
	}
	if d.CellTemperature.IsSet() {
		return units.TemperatureBounds{Low: units.Celsius(-60), High: units.Celsius(120)}.Check(op, "CellTemperature", d.CellTemperature)
	}
	return nil
}
