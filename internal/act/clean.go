package act

// clean tells hands, washing-up, boards after raw food and the last clean apart.
func (s span) clean() []Kind {
	final := s.says("final") || s.says("finally", "end") && s.has(finalWords)
	if s.f.at > 0 && at(s.ts, s.f.at-1).is("final", "last") {
		final = true
	}
	chore := s.f.is("washup", "tidy", "cleandown", "clean", "clear", "sweep", "mop", "wipe", "sanitise", "sanitize", "disinfect")
	switch {
	case s.has(handWords) && s.f.is("wash", "clean", "dry", "rinse", "scrub", "sanitise", "sanitize", "wipe", "disinfect"):
		return []Kind{WashHands}
	case s.f.is("wipe", "clean") && !final && s.has(boardWords) && !s.says("sink", "floor", "kitchen"):
		return []Kind{CleanDown}
	case chore && final, s.f.is("sweep", "mop"), s.f.is("clean", "tidy", "wipe", "cleandown", "clear", "scrub", "wash") && s.has(finalWords) && (!s.says("dishes") || s.says("sink", "floor")):
		return []Kind{FinalClean}
	case s.f.is("washup", "tidy") && s.says("sink", "floor", "cooker", "hob") && s.f.to > s.f.at+2:
		return []Kind{WashUp, FinalClean}
	case s.f.is("dry") && s.says("sink", "floor", "hob"):
		return []Kind{FinalClean}
	case s.f.is("washup", "tidy"):
		return []Kind{WashUp}
	case s.f.is("cleandown", "sanitise", "sanitize", "disinfect"):
		return []Kind{CleanDown}
	case s.f.is("dry", "rinse", "wash", "scrub", "wipe", "clean") && s.foodNamed() && !s.has(boardWords):
		return []Kind{Other}
	case s.f.is("clear"):
		if s.says("table", "plates") || s.has(boardWords) || len(s.objects()) == 0 {
			return []Kind{WashUp}
		}
		return []Kind{Other}
	case s.has(boardWords):
		return []Kind{CleanDown}
	case s.f.is("wipe"):
		return []Kind{CleanDown}
	case s.has(potWords), len(s.objects()) == 0 && !s.f.is("dry", "rinse", "scrub"), s.f.is("clean"):
		return []Kind{WashUp}
	}
	return []Kind{Other}
}

// foodNamed says whether what is washed or dried is food.
func (s span) foodNamed() bool {
	return s.has(produce) || s.has(meat) || s.has(fish) || s.has(words("chicken egg herbs berries fruit"))
}
