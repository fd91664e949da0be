package inverter

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Site is where a generator runs. The zero value is not stated.
type Site uint8

// The sites.
const (
	OpenAir     Site = iota + 1 // outside, away from every opening
	Compartment                 // one made for it in the vehicle, sealed from the inside, its exhaust led out
	NearOpening                 // beside a window, a door or a vent
	UnderRoof                   // under an awning, a slide-out or a shelter
	Inside                      // in a room, a tent, a garage or the vehicle
)

var siteWords = [...]string{"not stated", "open air", "compartment", "near an opening", "under a roof", "inside"}

// String returns "open air", "compartment", "near an opening", "under a roof",
// "inside" or "not stated"; a value that is not defined prints its number.
func (s Site) String() string { return word(siteWords[:], "Site", uint8(s)) }

// MarshalText returns what String does, and empty text for the zero value; a
// value that is not defined is a [*units.RangeError].
func (s Site) MarshalText() ([]byte, error) {
	return marshalWord("inverter.Site.MarshalText", "Site", siteWords[:], s, uint8(s))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves s alone.
func (s *Site) UnmarshalText(text []byte) error {
	i, err := unmarshalWord("a site of a generator", siteWords[:], text)
	if err == nil {
		*s = Site(i)
	}
	return err
}

// An Engine is a generator with an engine.
type Engine struct {
	Name string // not empty
	Site Site   // where it runs
}

// An Exhaust is the result of [CarbonMonoxide].
type Exhaust struct {
	Engine Engine       // as used
	Away   units.Length // that it is to be from every opening, outside
}

// awayFromOpenings is how far a generator is to be from every opening.
const awayFromOpenings = 20 * units.Foot

// CarbonMonoxide returns what has to be said of any engine: it makes carbon
// monoxide. There is no number to it that would make a place good; wind, a
// slide-out and an open window change it within minutes.
//
// An empty name and a site that is not defined give a [*units.RangeError], and
// the zero Exhaust.
func CarbonMonoxide(e Engine) (Exhaust, error) {
	const op = "inverter.CarbonMonoxide"
	if err := firstError(
		checkName(op, "Name", e.Name),
		checkWord(op, "Site", siteWords[:], e.Site, uint8(e.Site)),
	); err != nil {
		return Exhaust{}, err
	}
	return Exhaust{Engine: e, Away: awayFromOpenings}, nil
}

// Findings returns that the engine makes carbon monoxide: a danger where it is
// stated to run inside, under a roof or near an opening.
func (x Exhaust) Findings() []working.Finding {
	f := working.Finding{
		Severity: working.Caution, Rule: "carbon-monoxide", Source: monoxide,
		Numbers: []working.Number{{Name: "from every opening", Value: x.Away, Unit: "ft"}},
		Message: "The engine of " + x.Engine.Name + " makes carbon monoxide, which nobody smells and which kills people asleep.",
		Fix:     "Run it outside and away from every door, window and vent, the neighbour's too, with the exhaust pointing away, and have a carbon monoxide alarm inside that works.",
	}
	switch x.Engine.Site {
	case NearOpening, UnderRoof, Inside:
		f.Severity, f.Rule = working.Danger, "carbon-monoxide-gathers"
		f.Message += " It is stated to run " + x.Engine.Site.String() + ", where that gathers or gets in."
		f.Fix = "Do not run it there. " + f.Fix
	case Compartment:
		f.Message += " A compartment holds only while its seals and its exhaust pipe do."
		f.Fix = "Have the seals and the exhaust looked at before the season and after every knock, keep windows on that side shut, and have a carbon monoxide alarm inside that works."
	}
	return []working.Finding{f}
}
