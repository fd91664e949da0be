package protection_test

import (
	"strings"
	"testing"

	"example.com/drawbar/book/protection"
	"example.com/drawbar/book/weave"
)

// TestAnswers reads what an example says: what its default has to find, and
// that the finding goes when its cause is taken away.
func TestAnswers(t *testing.T) {
	for _, tt := range []struct {
		name, example string
		set           []weave.Setting
		want, without string
	}{
		// 13.3 V over 4 mΩ / 2 + 0.8 mΩ
		{"two batteries", "upgrade", nil, "All of them give 4750 A", ""},
		{"breaks too little", "upgrade", nil, "Rule interrupting-too-low", ""},
		{"breaks enough", "upgrade", []weave.Setting{{Input: "breaks", Value: "10 kA"}}, "4750 A", "interrupting-too-low"},
		{"never opens", "lamp", nil, "Rule far-fault-too-weak", ""},
		{"its own fuse", "lamp", []weave.Setting{{Input: "fuse", Value: "7.5 A"}}, "86.6 A", "far-fault-too-weak"},
		{"late", "slow", nil, "Rule withstand-exceeded", ""},
		{"in time", "slow", []weave.Setting{{Input: "opens", Value: "1 s"}}, "1.75 s", "withstand-exceeded"},
		// (226 · √ln(484.5/339.5) · 1.309 mm² / 86.59 A)²
		{"late, cross-linked", "slow", []weave.Setting{{Input: "thermoset", Value: "yes"}}, "which is 4.15 s of this current", "withstand-exceeded"},
		// (115 · 8.37 mm²)² = 0.926 kA²s against (2.5 kA)² · 0.2 s
		{"cable destroyed", "withstand", nil, "1.25 kA²s go through it, and it bears 0.926 kA²s", ""},
		{"beyond the method", "withstand", []weave.Setting{{Input: "current", Value: "50 A"}}, "for more than 5 s", "withstand-exceeded"},
		{"switch", "path", nil, "What its switch bears: 100 A.", ""},
		{"new switch", "path", []weave.Setting{{Input: "switch", Value: "400 A"}}, "What its bus bar bears: 250 A.", "load-above-part"},
		{"place in a vehicle", "place", nil, "at most 18 in", ""},
		{"place on a boat", "place", []weave.Setting{{Input: "rules", Value: "33 CFR 183"}}, "Rule place-from-memory", "device-far-from-source"},
		{"not from the post", "place", []weave.Setting{{Input: "rules", Value: "33 CFR 183"}, {Input: "post", Value: "no"}}, "at most 40 in", ""},
		{"next size up", "next", nil, "device of 60 A, by the rule: next standard rating", "device-above-limit"},
		{"not for receptacles", "next", []weave.Setting{{Input: "receptacles", Value: "yes"}}, "Rule device-above-limit", ""},
	} {
		woven, err := weave.WeaveExample(protection.Chapter(), tt.example, tt.set)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		text := woven.Markdown()
		if !strings.Contains(text, tt.want) {
			t.Errorf("%s: does not say %q", tt.name, tt.want)
		}
		if tt.without != "" && strings.Contains(text, tt.without) {
			t.Errorf("%s: still says %q", tt.name, tt.without)
		}
	}
}
