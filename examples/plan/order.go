package plan

import (
	"slices"

	"example.com/drawbar/units/working"
)

// A consequence is what follows if a finding is left alone, the worst first.
// It orders findings of one severity.
type consequence int

const (
	kills   consequence = iota // a shock, or an explosion
	burns                      // a fire
	damages                    // the bank, or what hangs on it
	stops                      // what should run
	wastes                     // energy, or time
)

// perConsequence is more than there are rules of one consequence.
const perConsequence = 1000

// rankOf returns where a finding stands among those of its severity: by its
// consequence, then in the order below. A danger that is not listed may burn,
// for all that is known here; other findings come behind those listed.
func rankOf(f Finding) int {
	for c, rules := range [...][]string{
		kills: {"several-neutral-bonds", "no-neutral-bond", "no-fault-path", "earth-is-no-fault-path", "fault-cannot-open-device",
			"fault-opens-slowly", "load-current-in-ground", "hydrogen"},
		burns: {"no-device-stated", "device-above-limit", "device-at-wrong-end", "device-far-from-source", "load-above-ampacity",
			"conductor-below-continuous", "far-fault-too-weak", "far-fault-slow", "interrupting-too-low", "string-fuse-above-label",
			"string-above-controller", "relay-below-device", "pass-through-device-not-stated", "run-cannot-carry", "cord-behind-larger-device", "outlet-below-service"},
		damages: {"charge-above-limit", "charge-above-limit-one-out", "lithium-too-cold-to-charge", "lithium-cold",
			"lithium-temperature-unknown", "too-hot-to-charge", "input-current-above-limit"},
		stops: {"must-not-stop-and-dead", "below-cut-off", "drop-above-allowed", "path-drop-above-allowed", "below-cut-out",
			"bank-feeds-its-own-charger", "discharge-above-limit", "discharge-above-limit-one-out", "silent-failover",
			"device-below-load", "sun-below-use", "use-above-charge", "converter-above-generator", "start-above-inverter", "starts-on-nothing", "too-little-at-inlet"},
	} {
		if i := slices.Index(rules, f.Rule); i >= 0 {
			return c*perConsequence + i
		}
	}
	if f.Severity == working.Danger {
		return int(burns)*perConsequence + perConsequence - 1
	}
	return int(wastes) * perConsequence
}

// ordered sorts findings: the worst severity first, within it the worst
// consequence, and the rest as they were found.
func ordered(list []Finding) {
	slices.SortStableFunc(list, func(a, b Finding) int {
		if a.Severity != b.Severity {
			return int(b.Severity) - int(a.Severity)
		}
		if a.Severity == working.Note {
			return 0
		}
		return rankOf(a) - rankOf(b)
	})
}
