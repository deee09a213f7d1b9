-- Asks for pages of one kind, about a hundred times a second over all connections: `wrk -t 2 -c 12 -s pages.lua URL -- KIND`.
-- Joints and listings are drawn anew each time, so that nothing is kept from the last.

local kinds = {
  overview = function() return "/" end,
  joint = function(n) return string.format("/joints/J-%05d", n(20000)) end,
  section = function(n) return string.format("/joints/J-%05d/section.svg", n(20000)) end,
  reading = function(n) return string.format("/listings/%s", reading[n(#reading) + 1]) end,
  listings = function() return "/listings" end,
  questions = function() return "/questions" end,
  questions_further = function() return "/questions?after=" .. further end,
  question = function() return "/questions/" .. further end,
  journal = function() return "/journal" end,
  joints_of_storey = function(n) return string.format("/joints?storey=L%d", n(40) + 1) end,
  joints_of_barrier = function(n) return string.format("/joints?barrier=FB-%03d", n(300)) end,
  joints_by_words = function(n) return string.format("/joints?words=fb-%03d+wall&state=open", n(300)) end,
  selection = function(n) return string.format("/selection?of=M%03d", n(400)) end,
  selection_of_joint = function(n) return string.format("/selection?of=J-%05d", n(20000)) end,
  api_joints = function(n) return string.format("/api/v1/joints?after=J-%05d", n(19000)) end,
  api_joint = function(n) return string.format("/api/v1/joints/J-%05d", n(20000)) end,
  api_questions = function() return "/api/v1/questions" end,
  api_journal = function() return "/api/v1/journal" end,
}

local ask
function init(args)
  math.randomseed(os.time())
  ask = kinds[args[1]]
  further = args[2]
  reading = {}
  for file in string.gmatch(args[3] or "", "[^,]+") do table.insert(reading, file) end
end

function request() return wrk.format("GET", ask(function(most) return math.random(0, most - 1) end)) end

-- Twelve connections, each of which waits 60 to 180 ms: a hundred requests a second where answers take no time.
function delay() return math.random(60, 180) end
