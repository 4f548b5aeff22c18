package rootcast.learning;

import rootcast.crop.CropProfile;

/** A proposal and what it rests on. Nothing uses it until somebody adopts it. */
public record LearnedProfile(CropProfile profile, Evidence evidence) {}
