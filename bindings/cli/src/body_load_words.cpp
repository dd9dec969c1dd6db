// SPDX-License-Identifier: MPL-2.0
#include "body_load_report.h"
#include "text_table.h"

#include <plate/core/error.h>

namespace plate
{

std::string case_words(const BodyLoadCase& load)
{
  const std::string force = message(fixed(load.force, load.force < 10.0 ? 2 : 1), " N");
  if (load.name == "strings")
    return message("strings: ", force, " on the bridge, and their pull at neck and lower end");
  if (load.name == "thumb")
    return message("thumb: ", force, " between top and back in the lower bout");
  if (load.name == "squeeze")
    return message("squeeze: ", force, " on the ribs at the waist, from both sides");
  return message("wing: knock of ", force, " on the edge of a soundhole, the body hanging free");
}

const std::vector<std::string_view>& body_load_notes()
{
  static const std::vector<std::string_view> notes = {
      "The body hangs free in the balance of its loads; deflections are those against the ribs. Strings run in the "
      "middle plane, of one tension to both sides of the bridge, which presses evenly with both feet and stands "
      "square to its load; strings, neck, fingerboard and bridge stiffen nothing.",
      "Linings and blocks are layers of the ribs here: their margins, and all near the ends where the blocks pull, are "
      "rough. Glue joints and the wood under the ends of the post are not judged. The post is glued at both ends here: "
      "a "
      "real one comes loose where hands pull at it harder than the strings press."};
  return notes;
}

std::vector<const Model*> models_of(const BodyModel& model)
{
  std::vector<const Model*> models;
  for (const BodyPart& part : model.body.parts)
    models.push_back(&part.model);
  return models;
}

double post_share(const BodyLoadStudy& study, std::size_t post)
{
  return study.cases.front().post_forces[post] / study.downforce;
}

double edge_force(const BodyLoadStudy& study)
{
  double left = study.downforce;
  for (const double force : study.cases.front().post_forces)
    left -= force;
  return left;
}

} // namespace plate
