package plan

import (
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/loads"
)

// machines are the ends of circuits that every description has by these names.
func machines() []string {
	return []string{"bank", "inverter", "converter", "controller", "roof", "tow vehicle", "tow charger", "generator", "shore"}
}

// knownEnds are the ends that a circuit of r may begin at: machines, buses and
// their panels, and the places that the description names.
func knownEnds(r Rig) []string {
	list := machines()
	for _, b := range r.Buses {
		list = append(list, b.Name, panelOf(b.Name))
	}
	return append(list, r.Places...)
}

// panelOf is the panel of a bus, which is the bus by another name.
func panelOf(bus string) string { return bus + " panel" }

// samePlace reports whether two ends are one: a bus and its panel are.
func samePlace(r Rig, a, b string) bool {
	if a == b {
		return true
	}
	for _, bus := range r.Buses {
		if panel := panelOf(bus.Name); a == bus.Name && b == panel || b == bus.Name && a == panel {
			return true
		}
	}
	return false
}

// checkPlaces looks at the names of buses and places, which must not hide a
// machine or each other.
func checkPlaces(d *decoder, r Rig) {
	for i, b := range r.Buses {
		if slices.Contains(machines(), b.Name) {
			d.fail(at("buses", i, "name"), strconv.Quote(b.Name), "another name than those of the ends of circuits: "+strings.Join(machines(), ", "))
		}
	}
	taken := knownEnds(Rig{Buses: r.Buses})
	for i, p := range r.Places {
		if p != "" && slices.Contains(taken, p) {
			d.fail("places["+strconv.Itoa(i)+"]", strconv.Quote(p), "a name that is not taken")
		}
		taken = append(taken, p)
	}
}

// checkEnds refuses what would take a circuit out of a check: an end that is
// misspelt, in other words, or does not suit a mark of the circuit.
func checkEnds(d *decoder, r Rig) {
	known := knownEnds(r)
	// A name that was refused may be the one that is meant, unless another is
	// near.
	doubtful := slices.Contains(known, "") || !d.sound("places") || !d.sound("buses")
	known = slices.DeleteFunc(known, func(s string) bool { return s == "" || s == panelOf("") })
	uses := map[string]int{}
	var asked []string // about a place, once
	for _, c := range r.Circuits {
		uses[c.To]++
	}
	for i, c := range r.Circuits {
		if c.From == "" || c.To == "" {
			continue
		}
		if !slices.Contains(known, c.From) {
			if !doubtful || meant(c.From, known) != "" {
				d.fail(at("circuits", i, "from"), strconv.Quote(c.From), endsAllowed(c.From, known))
			}
			continue
		}
		if !slices.Contains(known, c.To) {
			if meant(c.To, known) != "" {
				d.fail(at("circuits", i, "to"), strconv.Quote(c.To), endsAllowed(c.To, known))
				continue
			}
			if !doubtful && uses[c.To] > 1 && !slices.Contains(asked, c.To) {
				asked = append(asked, c.To)
				d.fail(at("circuits", i, "to"), strconv.Quote(c.To), "it listed in places, since "+strconv.Itoa(uses[c.To])+" circuits end there")
			}
		}
		checkMarks(d, r, i)
		if dev := c.Device; dev != nil && dev.At != "" && dev.At != c.From && dev.At != c.To {
			d.fail(at("circuits", i, "device.at"), strconv.Quote(dev.At), "an end of the circuit: "+c.From+" or "+c.To)
		}
	}
}

// endsAllowed says what an end may be.
func endsAllowed(end string, known []string) string {
	return "one of " + strings.Join(known, ", ") + ", or a place that is listed in places" + didYouMean(meant(end, known), known)
}

// meant returns the known end that was probably meant by another word: one that
// is near, or another name of it. A circuit to the "battery" would be left out
// of every check of the bank.
func meant(end string, known []string) string {
	switch strings.ToLower(end) {
	case "battery", "batteries", "battery bank", "house battery", "house batteries", "house bank":
		return "bank"
	case "charger", "battery charger":
		return "converter"
	case "charge controller", "solar controller", "solar charge controller":
		return "controller"
	case "panels", "solar", "solar panels":
		return "roof"
	case "truck", "car", "tow truck", "alternator":
		return "tow vehicle"
	case "dc charger", "dc-dc charger", "dc to dc charger":
		return "tow charger"
	case "inlet", "shore inlet", "shore power", "pedestal":
		return "shore"
	}
	return nearest(end, known)
}

// checkMarks looks at the marks of circuit i, whose ends are known, and at the
// ends that only go together.
func checkMarks(d *decoder, r Rig, i int) {
	c := r.Circuits[i]
	if c.String && (c.From != "roof" || c.To != "controller" || r.Roof == nil && d.sound("roof")) {
		d.fail(at("circuits", i, "string"), "true", "only a circuit from \"roof\" to \"controller\", with the roof described")
	}
	if c.Regulated && c.From != "controller" && c.To != "tow charger" {
		d.fail(at("circuits", i, "regulated"), "true", "only a circuit from \"controller\" or to \"tow charger\"")
	}
	if c.From == "controller" && c.To != "bank" {
		d.fail(at("circuits", i, "to"), strconv.Quote(c.To), "\"bank\", for a circuit from \"controller\"")
	}
	direct := false
	for _, b := range r.Buses {
		direct = direct || b.Name == c.Bus && b.Kind == loads.Direct
	}
	if c.To == "inverter" && direct && c.From != "bank" {
		d.fail(at("circuits", i, "from"), strconv.Quote(c.From), "\"bank\", for the direct-current circuit to \"inverter\"")
	}
	stated := 0
	for _, is := range []bool{c.Current.IsSet(), c.Power.IsSet(), len(c.Loads) > 0} {
		if is {
			stated++
		}
	}
	if stated > 1 {
		d.fail(at("circuits", i, "current"), "stated more than once", "one of current, power and loads")
	}
}
