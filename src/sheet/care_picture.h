#pragma once

#include "figure/figure.h"
#include "sheet/care_words.h"

namespace furnish {

/// What is brushed how often, as a picture: the dog of this trim, its coat shaded by that, with
/// rings where mats begin; beside it, or under it on narrow paper, the same in words with the
/// picture's signs before them.
class CarePicture {
 public:
  /// Both must outlive it.
  CarePicture(const CareRoutine&, const CareDesk&);
  struct Form {
    Length least;                        ///< the dog's height, or more
    int dog_share = 5, words_share = 6;  ///< of the width
    bool marked = true;                  ///< with the signs of a calendar
    bool mats = true;  ///< with what is said of mats; else that is a row of its own
  };
  BlockPtr block(const Form&) const;
  /// What is said of mats, after the picture's sign for where they begin.
  BlockPtr mats() const;

 private:
  BlockPtr words(const Form&) const;
  const CareRoutine& routine_;
  const CareDesk& desk_;
  FigureInput figure_;
  DrawnDogPtr dog_;
};
}  // namespace furnish
