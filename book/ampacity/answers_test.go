package ampacity_test

import (
	"strings"
	"testing"

	"example.com/drawbar/book/ampacity"
	"example.com/drawbar/book/weave"
)

// TestAnswers reads what an example says: at its default the published number,
// and with an input changed what that input does.
func TestAnswers(t *testing.T) {
	for _, tt := range []struct {
		name, example string
		set           []weave.Setting
		want          string
	}{
		// 30 A of Table 310.16 at 90 °C, 20 A at 60 °C
		{"terminals limit", "wall", nil, "**Answer.** 20 A, limited by the terminals."},
		{"old edition", "wall", []weave.Setting{{Input: "rules", Value: "NEC 2008"}}, "**Answer.** 25 A, limited by the terminals."},
		// 40 A · 0.71 · 0.80
		{"bundle under a roof", "roof", nil, "**Answer.** 22.72 A each"},
		// 40 A · 0.76 · 0.70
		{"cooler, more wires", "roof", []weave.Setting{{Input: "ambient", Value: "55 °C"}, {Input: "wires", Value: "9"}}, "**Answer.** 21.28 A each"},
		// 55 A · 0.71 · 0.80 = 31.24 A at 8 AWG, 22.72 A at 10 AWG
		{"size", "size", nil, "**Answer.** 8 AWG, which may carry 31.24 A"},
		// 260 A · 0.71 · 0.80 at 4/0
		{"no size", "size", []weave.Setting{{Input: "current", Value: "200 A"}}, "None up to 4/0 AWG, which may carry 147.7 A"},
		// 95 A · 0.76 = 72.2 A is the last not below 70 A
		{"warmest air", "terminals", nil, "Up to 55 °C"},
		// 30 A · 0.76 · 0.80 below the limit of 20 A, and 30 A · 0.82 above it
		{"lesser is the heat", "cupboard", nil, "Keep to the lesser, 18.24 A."},
		{"lesser is the rule", "cupboard", []weave.Setting{{Input: "wires", Value: "2"}}, "Keep to the lesser, 20 A."},
		// 80 A · 0.86, and 80 A · 0.60 at 50 V and more
		{"engine space", "boat", nil, "**Answer.** 68.8 A."},
		{"50 V and more", "boat", []weave.Setting{{Input: "system", Value: "120 V"}, {Input: "engine", Value: "no"}}, "**Answer.** 48 A."},
		{"cord", "cord", nil, "The table allows this cord 13 A"},
		{"cord on its reel", "cord", nil, "Rule cord-coiled"},
		{"neutral", "neutral", nil, "55 A with two conductors that count, 45 A with three."},
	} {
		woven, err := weave.WeaveExample(ampacity.Chapter(), tt.example, tt.set)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if !strings.Contains(woven.Markdown(), tt.want) {
			t.Errorf("%s: does not say %q", tt.name, tt.want)
		}
	}
	laid, err := weave.WeaveExample(ampacity.Chapter(), "cord", []weave.Setting{{Input: "coiled", Value: "no"}})
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(laid.Markdown(), "cord-coiled") {
		t.Error("a cord that is laid out is still said to be coiled")
	}
}
