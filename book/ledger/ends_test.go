package ledger_test

import (
	"strings"
	"testing"

	"example.com/drawbar/book/ledger"
	"example.com/drawbar/book/weave"
)

// TestKettleAllDay: an inverter that is left on is on for a day at most, and a
// kettle that nobody uses has an answer too.
func TestKettleAllDay(t *testing.T) {
	for _, c := range []struct{ name, value, want string }{
		{"left", "24 h", "81.4 Ah"},  // 600 Wh / 0.88 + 14 W · 24 h, over 12.5 V
		{"hours", "24 h", "2650 Ah"}, // 1200 W · 24 h / 0.88 + 14 W · 24 h, over 12.5 V
		{"hours", "0 h", "0.56 Ah"},  // 14 W · 0.5 h over 12.5 V
		{"power", "0 W", "1.12 Ah"},  // 14 W · 1 h over 12.5 V
		{"volts", "240 V", "55.7 Ah"},
		{"bank", "48 V", "14.5 Ah"},
	} {
		woven, err := weave.WeaveExample(ledger.Chapter(), "kettle", []weave.Setting{{Input: c.name, Value: c.value}})
		if err != nil {
			t.Errorf("%s = %s: %v", c.name, c.value, err)
			continue
		}
		if text := woven.Text(); !strings.Contains(text, c.want) {
			t.Errorf("%s = %s: no %s in\n%.600s", c.name, c.value, c.want, text)
		}
	}
}
