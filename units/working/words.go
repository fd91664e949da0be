package working

import (
	"slices"
	"strings"
	"unicode"

	"example.com/drawbar/units"
)

// Words splits text where a line may end: at spaces, but not at a no-break
// space and not between a number and its unit, so that "104.6 V" is one word,
// as are "10 AWG" and "(−22 °C)," with its marks.
func Words(text string) []string {
	var list []string
	number := false // the last word is one
	for _, word := range strings.FieldsFunc(text, isBreak) {
		if number && isUnitWord(word) {
			list[len(list)-1] += " " + word
			number = false
			continue
		}
		list = append(list, word)
		number = isNumberWord(word)
	}
	return list
}

// isBreak reports whether a line may end at r.
func isBreak(r rune) bool { return unicode.IsSpace(r) && string(r) != noBreak }

// isNumberWord reports whether word is digits, a range or a fraction, such as
// "(10-20" or "4/0": it begins so, whatever sign or mark stands before it, and
// has nothing behind it.
func isNumberWord(word string) bool {
	word = strings.TrimLeftFunc(word, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	return word != "" && isDigit(word[0]) && isDigit(word[len(word)-1])
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// isUnitWord reports whether word, but for marks behind it, is a unit that
// package units reads, or what else stands behind a number as a unit does.
func isUnitWord(word string) bool {
	word = strings.TrimRight(word, ".,;:!?)]*`'\"’”")
	switch word {
	case "AWG", "kcmil", "points":
		return true
	case "1": // the unit of a pure number
		return false
	}
	return slices.ContainsFunc(everyKind(), func(v units.Value) bool {
		_, _, err := units.Measure(v, word)
		return err == nil
	})
}

// everyKind returns a value of every kind that has a unit.
func everyKind() []units.Value {
	return []units.Value{
		units.Voltage(0), units.Current(0), units.Resistance(0), units.Charge(0),
		units.JouleIntegral(0), units.Resistivity(0), units.ResistancePerLength(0), units.Power(0),
		units.ApparentPower(0), units.Energy(0), units.Irradiance(0), units.Irradiation(0),
		units.Mass(0), units.MassPerLength(0), units.Pressure(0), units.Speed(0),
		units.Frequency(0), units.Ratio(0), units.TemperatureChange(0), units.PerKelvin(0),
		units.Elapsed(0), units.Length(0), units.Area(0), units.Volume(0), units.VolumeFlow(0),
		units.Angle(0), units.Celsius(0),
	}
}
