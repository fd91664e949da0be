package plan

import "strconv"

// idle refuses what leaves circuit c, at path, without current: its loads that
// are stated to take nothing, or that it has none. It is true.
func (m *maker) idle(path string, c Circuit) bool {
	for i, l := range m.rig.Loads {
		rating, value := "power", l.Power.String()
		switch {
		case l.Current.IsSet():
			rating, value = "current", l.Current.String()
		case l.Apparent.IsSet():
			rating, value = "apparent", l.Apparent.String()
		}
		for _, name := range c.Loads {
			if name == l.Name {
				m.fail(at("loads", i, rating), strconv.Quote(value), "more than nothing, since nothing else is on "+path+", \""+c.Name+"\"")
			}
		}
	}
	if len(c.Loads) == 0 {
		m.fail(path+".current", "", "current or power: nothing draws on what it feeds")
	}
	return true
}
