package working_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

func ExampleWords() {
	for _, word := range working.Words("on the coldest morning 104.6 V, limit 100 V") {
		fmt.Printf("%q\n", word)
	}
	// Output:
	// "on"
	// "the"
	// "coldest"
	// "morning"
	// "104.6 V,"
	// "limit"
	// "100 V"
}

func TestWords(t *testing.T) {
	for in, want := range map[string]string{
		// a number and its unit
		"at 104.6 V now": "at|104.6 V|now", "is -22 °C.": "is|-22 °C.", "(10 AWG)": "(10 AWG)", "250 kcmil": "250 kcmil",
		"-0.28 %/K": "-0.28 %/K", "0 % to 100 %": "0 %|to|100 %", "5.97 kWh/m², dull": "5.97 kWh/m²,|dull", "6 ft 3 in": "6 ft|3 in",
		// a no-break space
		"a\u00a0b c": "a\u00a0b|c",
		// no number, no unit, or neither
		"the V": "the|V", "5 (V)": "5|(V)", "2nd V": "2nd|V", "L_1 V": "L_1|V", "5 cups": "5|cups", "5 .": "5|.", "3 1 A": "3|1 A",
		"5 1 2": "5|1|2", "": "", " \t\n": "", "5": "5",
	} {
		if got := strings.Join(working.Words(in), "|"); got != want {
			t.Errorf("Words(%q) = %s, want %s", in, got, want)
		}
		if again := working.Words(strings.Join(working.Words(in), " ")); strings.Join(again, "|") != want {
			t.Errorf("Words(%q) once joined: %q", in, again)
		}
	}
}

// Every kind of quantity has a unit that is known behind a number.
func TestWordsKnowEveryKind(t *testing.T) {
	for _, v := range []units.Value{
		units.Volt, units.Ampere, units.Ohm, units.AmpereHour, units.JouleIntegral(1), units.Resistivity(1), units.ResistancePerLength(1),
		units.Watt, units.VoltAmpere, units.WattHour, units.WattPerSquareMetre, units.KilowattHourPerSquareMetre, units.Kilogram,
		units.MassPerLength(1), units.Pressure(1), units.Speed(1), units.Frequency(1), units.Percent, units.Kelvin, units.PercentPerKelvin,
		units.Hour, units.Metre, units.SquareMillimetre, units.Volume(1), units.VolumeFlow(1), units.Radian, units.Celsius(1),
	} {
		if text := v.String(); len(working.Words(text)) != 1 {
			t.Errorf("%q is broken", text)
		}
	}
}

// Text keeps a number with its unit wherever the 80th column falls.
func TestTextKeepsUnits(t *testing.T) {
	source := func(place string) working.Source {
		return working.Source{Title: "a book", Place: place, Provenance: working.CommonPractice}
	}
	for fill := range 80 {
		words := strings.Repeat("x", fill) + " 104.6 V at -22 °C and 1.403 kWh/m² on 10 AWG"
		s := working.NewSheet("Title " + words)
		s.Given("a", 104.6*units.Volt, "V", words)
		s.LookUp("b", 2*units.One, "1", words, working.Lookup{Source: source(words), Key: words, Row: words, Between: words})
		s.Formula("c", 209.2*units.Volt, "V", words, "a * b")
		s.Choose("what", words, words, source(words))
		text := s.Text()
		for _, line := range strings.Split(text, "\n") {
			if utf8.RuneCountInString(line) > 80 {
				t.Fatalf("%d columns: %q", utf8.RuneCountInString(line), line)
			}
			for _, unit := range []string{"V", "°C", "kWh/m²", "AWG"} {
				if rest, ok := strings.CutPrefix(strings.TrimSpace(line), unit); ok && (rest == "" || rest[0] == ' ' || rest[0] == ',') {
					t.Fatalf("a number is parted from its unit:\n%s", text)
				}
			}
		}
	}
}

// A number and unit that no line holds are parted at the space between them.
func TestTextTooWide(t *testing.T) {
	digits := strings.Repeat("9", 78)
	s := working.NewSheet("wide")
	s.Choose("what", digits+" kWh/m²", "", working.Source{})
	s.Choose("what", digits+"9 kWh/m²", "", working.Source{})
	for _, want := range []string{"\n  " + digits + "\n  kWh/m²\n", "\n  " + digits + "\n  9 kWh/m²"} {
		if !strings.Contains(s.Text(), want) {
			t.Errorf("%s\ndoes not have%s", s.Text(), want)
		}
	}
}
